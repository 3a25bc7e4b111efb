#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/charge/wall_heat.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/gas.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <cmath>
#include <span>
#include <string_view>

namespace windwall::vehicle {

/// Whether something covers the engine.
enum class Hood { closed, open };

/// What the bodywork does to the air around and into the engine.
struct EngineBay {
    static constexpr std::string_view description =
        "The air under the bodywork, and how the road's wind reaches the intake.";

    Hood hood = Hood::closed;
    double rise = 30;                 // K above the day, at standstill with the hood closed
    double halving_speed = 60 / 3.6;  // m/s
    double stir = 0.7;                // m/s, of the air past warm walls, at standstill
    double intake_share = 0;
    double ram_recovery = 0;
    double volume = 0.25;  // m3

    static constexpr double changes = 0.2;  // of all the air, 1/s, at standstill; estimate
    /// Of the rise with the hood closed: warm air rises through openings of area A by its own
    /// weight, so the same heat warms it by A^(-2/3), and an open hood is some five times as wide.
    static constexpr double open_rise = 0.35;

    /// K above the day's air at a speed of the air over the vehicle in m/s: what the same heat does
    /// to a flow of air that grows with that speed.
    double rise_at(double air_speed) const noexcept { return standing_rise() / draught(air_speed); }
    double standing_rise() const noexcept { return hood == Hood::open ? open_rise * rise : rise; }
    /// How much more air passes than at standstill, at a speed of the air over the vehicle in m/s.
    double draught(double air_speed) const noexcept {
        return 1 + std::abs(air_speed) / halving_speed;
    }
    /// From warm walls to that air, W/(m2 K).
    double film_at(double air_speed) const noexcept {
        return charge::outside_film(stir * draught(air_speed));
    }
    /// The air under the bodywork, that the engine warms and the day's air replaces.
    std::array<media::LumpedNode, 1> thermal_nodes(
        const charge::Surroundings& around) const noexcept {
        const double capacity = volume * around.air_density *
                                media::dry_air().heat_capacity(around.ambient_temperature);
        const double replaced = changes * capacity;
        return {{{"air", capacity, replaced * standing_rise(), 0, 0,
                  replaced * draught(around.road_speed), around.ambient_temperature}}};
    }
    /// Pa above the day's air at the mouth of the intake.
    double ram(double air_density, double air_speed) const noexcept {
        return ram_recovery * air_density * air_speed * air_speed / 2;
    }

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::vehicle

template <>
struct windwall::fields::Names<windwall::vehicle::Hood> {
    static constexpr std::array<std::string_view, 2> names{"closed", "open"};
};
