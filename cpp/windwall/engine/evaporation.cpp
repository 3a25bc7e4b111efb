#include "windwall/engine/evaporation.hpp"

#include "windwall/media/liquids.hpp"

#include <algorithm>

namespace windwall::engine {
namespace {

constexpr double most_cooling = 0.2;  // of the temperature: a charge of mist

}  // namespace

AtValve at_valve(const Evaporation& evaporation, const media::Stream& charge,
                 const std::array<double, 4>& port_fuel) noexcept {
    AtValve made;
    const double early = evaporation.port_vapour;
    for (std::size_t i = 0; i < port_fuel.size(); ++i) {
        const double film = charge.film_share * charge.liquid[i];
        const double landed = evaporation.port_film * (1 - early) * port_fuel[i];
        made.early[i] = early * port_fuel[i];
        made.metal[i] = film + landed;
        made.flying[i] = charge.liquid[i] - film + (1 - early) * port_fuel[i] - landed;
    }
    return made;
}

AtValve petrol_at_port(double equivalence_ratio) noexcept {
    const double petrol =
        equivalence_ratio / media::liquid(media::Vapour::petrol).stoichiometric_ratio;
    return at_valve(Evaporation{}, {}, {0, 0, 0, petrol});
}

Evaporated evaporate(const media::Stream& charge, const AtValve& liquid, double share) noexcept {
    Evaporated made;
    double latent = 0, volume = 0;
    double capacity = charge.gas.heat_capacity(charge.temperature) * (1 + charge.vapour_share());
    for (const media::Vapour kind : media::all_vapours) {
        const std::size_t i = media::index(kind);
        const double all = liquid.early[i] + liquid.metal[i] + liquid.flying[i];
        if (!(all > 0)) continue;
        const media::Gas& vapour = media::vapour_gas(kind);
        const double from_gas = liquid.early[i] + share * liquid.flying[i];
        made.vapour[i] = from_gas + liquid.metal[i];
        latent += from_gas * media::liquids[i].latent_heat;
        capacity += made.vapour[i] * vapour.heat_capacity(charge.temperature) +
                    (all - made.vapour[i]) * media::liquids[i].heat_capacity;
        volume += made.vapour[i] * vapour.R;
    }
    made.cooling = std::min(latent / capacity, most_cooling * charge.temperature);
    made.displaced = volume / (charge.gas.R * (1 + charge.vapour_share()));
    return made;
}

std::span<const fields::Row> Evaporation::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default(
            "before_closing", "e_c", at<&Evaporation::before_closing>, number(), {0, 1}, 0.15,
            "Share of the drops that evaporates from the gas before the intake valve closes, and "
            "so "
            "makes room for more",
            "no source; less than the 0.7 measured without walls (SAE 2012-01-1275), for these "
            "supply the rest of the heat"),
        with_default(
            "before_knock", "e_k", at<&Evaporation::before_knock>, number(), {0, 1}, 0.15,
            "Share of the drops that evaporates from the gas before the end gas would knock, that "
            "before closing included",
            "0.7 of what thermodynamics allows was measured for direct injection, SAE "
            "2012-01-1275; drops from the intake have longer"),
        with_default("port_vapour", "e_a", at<&Evaporation::port_vapour>, number(), {0, 1}, 0.05,
                     "Share of the fuel injected at the port that evaporates from the gas before "
                     "the valve",
                     "estimate"),
        with_default("port_film", "e_w", at<&Evaporation::port_film>, number(), {0, 1}, 0.15,
                     "Share of the rest of it that lands on valve and port and evaporates there",
                     "a shut, hot valve: direct injection was measured to be colder by 14 K with "
                     "petrol and 49 K with E85, nearly all that it cools itself, SAE 2012-01-1275"),
        with_default("film_time", "tau_w", at<&Evaporation::film_time>, time("s"), {0.01, 10}, 0.4,
                     "How long liquid stays on the walls before the intake valves, where a drive "
                     "goes over time",
                     "no source; of the order of a second for fuel on warm ports"),
    };
    return table;
}

}  // namespace windwall::engine
