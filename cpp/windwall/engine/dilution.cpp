#include "windwall/engine/dilution.hpp"

#include "windwall/engine/fuel_air_cycle.hpp"
#include "windwall/media/liquids.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double usual_dilution = 0.05;
constexpr double flame_slope = 2.1;    // of the flame's speed over burned gas
constexpr double slowest_flame = 0.2;  // of the undiluted one
constexpr double duration_exponent = 0.85;
constexpr double all_burns = 0.25, nothing_burns = 0.40;
// Heat that water takes from 700 to 2500 K over what burned gas takes, as vapour and as drops that
// evaporate partly in the flame; that a flame slows by what it has to heat is an assumption.
constexpr double water_vapour = 1.9, water_drops = 2.8, alcohol_drops = 1.0;
// Of the latent heat of what evaporates after compression, what is lost as work over the heat
// released: 0.4 to 0.6 in constant-volume cycles with equilibrium products.
constexpr double latent_heat_lost = 0.5;

constexpr std::array liquids_counted{media::Vapour::water, media::Vapour::methanol,
                                     media::Vapour::ethanol};

/// kg of burned gas that would slow a flame as much, per kg of dry air.
double diluents(const media::Stream& charge, const AtValve& liquid, double evaporated) noexcept {
    const std::size_t water = media::index(media::Vapour::water);
    double sum = water_vapour *
                 (charge.vapour[water] + liquid.metal[water] + evaporated * liquid.flying[water]);
    for (const media::Vapour kind : liquids_counted) {
        const double late = (1 - evaporated) * liquid.flying[media::index(kind)];
        sum += late * (kind == media::Vapour::water ? water_drops : alcohol_drops);
    }
    return sum;
}

/// J per kg of dry air, taken in the flame by what was still liquid.
double late_latent_heat(const AtValve& liquid, double evaporated) noexcept {
    double sum = 0;
    for (const media::Vapour kind : liquids_counted)
        sum +=
            (1 - evaporated) * liquid.flying[media::index(kind)] * media::liquid(kind).latent_heat;
    return sum;
}

}  // namespace

double slowed_burn(double dilution) noexcept {
    const auto flame = [](double share) {
        return std::max(slowest_flame, 1 - flame_slope * share);
    };
    return std::pow(flame(usual_dilution) / flame(dilution), duration_exponent);
}

double share_that_burns(double dilution) noexcept {
    const double way = std::clamp((dilution - all_burns) / (nothing_burns - all_burns), 0.0, 1.0);
    return 1 - way * way * (3 - 2 * way);
}

Burning burning(const media::Stream& charge, const AtValve& liquid, const Mixture& mixture,
                double residual, double evaporated) noexcept {
    const double all = 1 + charge.vapour_share() + charge.liquid_share() + mixture.own_fuel;
    Burning made;
    made.dilution = residual + (1 - residual) * diluents(charge, liquid, evaporated) / all;
    made.burnt = share_that_burns(made.dilution);
    const double released = mixture.heating * (1 - unburnt_share(mixture.equivalence_ratio()));
    const double lost = latent_heat_lost * late_latent_heat(liquid, evaporated);
    made.kept = released > lost ? 1 - lost / released : 0;
    return made;
}

}  // namespace windwall::engine
