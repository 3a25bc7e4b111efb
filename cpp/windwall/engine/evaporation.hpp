#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <array>
#include <span>
#include <string_view>

namespace windwall::engine {

/// What the drops that arrive with the charge do in the cylinder.
struct Evaporation {
    static constexpr std::string_view description =
        "How much of the water and alcohol that arrives as drops evaporates in the cylinder.";

    double before_closing = 0.3;  // of each liquid, before the intake valve closes
    double before_knock = 0.8;    // of each liquid, before the end gas would knock

    static std::span<const fields::Row> rows();
};

/// What evaporating drops did to a charge, per kg of dry air.
struct Evaporated {
    double cooling{};                // K, of the gas at constant pressure
    double displaced{};              // volume of the vapour over that of the gas
    std::array<double, 4> vapour{};  // kg, by Vapour
};

/// A share of the water and alcohol drops evaporates from the gas alone. Petrol counts nothing: the
/// filling and the knock anchor were measured on petrol, whose evaporation is in them.
Evaporated evaporate(const media::Stream& charge, double share, double fuel) noexcept;

/// K by which evaporation cools a gas: `dose` kg of a liquid of `latent_heat` J/kg per kg of dry
/// air, whose vapour has `vapour_heat_capacity`; `carried` is the heat capacity of the fuel and
/// vapours already there, J/(kg K) per kg of dry air.
constexpr double evaporative_cooling(double dose, double latent_heat, double vapour_heat_capacity,
                                     double carried) noexcept {
    constexpr double air = 1005;  // J/(kg K)
    return dose * latent_heat / (air + carried + dose * vapour_heat_capacity);
}

}  // namespace windwall::engine
