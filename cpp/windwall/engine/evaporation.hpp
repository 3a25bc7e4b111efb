#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <array>
#include <span>
#include <string_view>

namespace windwall::engine {

/// Where the liquids evaporate that reach the intake valve, however they came there.
struct Evaporation {
    static constexpr std::string_view description =
        "Where the liquids evaporate that reach the intake valve, fuel injected there included.";

    double before_closing = 0.3;  // of the drops, before the intake valve closes
    double before_knock = 0.8;    // of the drops, before the end gas would knock
    double port_vapour = 0.05;    // of fuel injected at the port, from the gas before the valve
    double port_film = 0.85;      // of the rest of it, on valve and port
    double film_time = 0.5;       // s

    static std::span<const fields::Row> rows();
};

/// What reaches the intake valve as liquid, and fuel injected there, kg per kg of dry air by
/// Vapour.
struct AtValve {
    std::array<double, 4> early{};   // evaporates from the gas before the valve
    std::array<double, 4> metal{};   // evaporates on valve and port, with heat of the metal
    std::array<double, 4> flying{};  // goes into the cylinder as drops
};

/// The one account of every liquid: film of the charge and of what is injected at the port
/// evaporates on metal, drops fly on.
AtValve at_valve(const Evaporation& evaporation, const media::Stream& charge,
                 const std::array<double, 4>& port_fuel) noexcept;
/// Of petrol injected at the port: what filling and knock anchor were measured with.
AtValve petrol_at_port(double equivalence_ratio) noexcept;

/// What evaporating did to a charge, per kg of dry air.
struct Evaporated {
    double cooling{};                // K, of the gas at constant pressure
    double displaced{};              // volume of the vapour over that of the gas
    std::array<double, 4> vapour{};  // kg, by Vapour
};

/// What has evaporated once a share of the drops has: that and what came before it cools the gas,
/// what met metal only takes room.
Evaporated evaporate(const media::Stream& charge, const AtValve& liquid, double share) noexcept;

/// K by which evaporation cools a gas: `dose` kg of a liquid of `latent_heat` J/kg per kg of dry
/// air, whose vapour has `vapour_heat_capacity`; `carried` is the heat capacity of the fuel and
/// vapours already there, J/(kg K) per kg of dry air.
constexpr double evaporative_cooling(double dose, double latent_heat, double vapour_heat_capacity,
                                     double carried) noexcept {
    constexpr double air = 1005;  // J/(kg K)
    return dose * latent_heat / (air + carried + dose * vapour_heat_capacity);
}

}  // namespace windwall::engine
