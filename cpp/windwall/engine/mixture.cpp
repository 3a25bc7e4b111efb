#include "windwall/engine/mixture.hpp"

#include "windwall/media/liquids.hpp"

#include <algorithm>

namespace windwall::engine {

Mixture mix(const media::Stream& charge, const media::Fuel& fuel, double target,
            bool trimmed) noexcept {
    Mixture mixture;
    double air_needed = 0;  // by the injected fuels, kg per kg of dry air
    for (const media::Vapour vapour : media::all_vapours) {
        const auto& liquid = media::liquid(vapour);
        if (liquid.heating_value == 0) continue;
        const std::size_t i = media::index(vapour);
        const double share = charge.vapour[i] + charge.liquid[i];
        mixture.injected_fuel += share;
        mixture.heating += share * liquid.heating_value;
        air_needed += share * liquid.stoichiometric_ratio;
    }
    const double left = std::max(0.0, 1 / target - (trimmed ? air_needed : 0));
    mixture.own_fuel = left / fuel.stoichiometric_ratio();
    mixture.heating += mixture.own_fuel * fuel.heating_value();
    mixture.lambda = 1 / (left + air_needed);
    return mixture;
}

}  // namespace windwall::engine
