#include "windwall/engine/evaporation.hpp"

#include "windwall/media/liquids.hpp"

#include <algorithm>

namespace windwall::engine {
namespace {

constexpr double petrol_vapour_heat_capacity = 1700;  // J/(kg K), near 330 K
constexpr double most_cooling = 0.2;                  // of the temperature: a charge of mist

constexpr std::array counted{media::Vapour::water, media::Vapour::methanol, media::Vapour::ethanol};

}  // namespace

Evaporated evaporate(const media::Stream& charge, double share, double fuel) noexcept {
    Evaporated made;
    double latent = 0, volume = 0;
    double capacity = charge.gas.heat_capacity(charge.temperature) * (1 + charge.vapour_share()) +
                      fuel * petrol_vapour_heat_capacity;
    for (const media::Vapour kind : counted) {
        const std::size_t i = media::index(kind);
        if (charge.liquid[i] <= 0) continue;
        const double dose = made.vapour[i] = share * charge.liquid[i];
        const media::Gas vapour = media::vapour_gas(kind);
        latent += dose * media::liquids[i].latent_heat;
        capacity += dose * vapour.heat_capacity(charge.temperature);
        volume += dose * vapour.R;
    }
    made.cooling = std::min(latent / capacity, most_cooling * charge.temperature);
    made.displaced = volume / (charge.gas.R * (1 + charge.vapour_share()));
    return made;
}

std::span<const fields::Row> Evaporation::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default(
            "before_closing", "e_c", at<&Evaporation::before_closing>, number(), {0, 1}, 0.1,
            "Share of the drops of water and alcohol that evaporates from the gas before the "
            "intake valve closes, and so makes room for more",
            "0.2 to 0.4 at hot walls, which supply the rest of the heat; from memory, to be "
            "confirmed"),
        with_default(
            "before_knock", "e_k", at<&Evaporation::before_knock>, number(), {0, 1}, 0.15,
            "Share of the drops of water and alcohol that evaporates from the gas before the "
            "end gas would knock, that before closing included",
            "0.7 of what thermodynamics allows was measured for direct injection, SAE "
            "2012-01-1275; drops from the intake have longer"),
    };
    return table;
}

}  // namespace windwall::engine
