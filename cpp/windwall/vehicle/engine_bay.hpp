#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/gas.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <cmath>
#include <span>
#include <string_view>

namespace windwall::vehicle {

/// What the bodywork does to the air around and into the engine.
struct EngineBay {
    static constexpr std::string_view description =
        "The air under the bodywork, and how the road's wind reaches the intake.";

    double rise = 20;                 // K above the day, at standstill
    double halving_speed = 60 / 3.6;  // m/s
    double intake_share = 0;
    double ram_recovery = 0;
    double volume = 0.25;  // m3

    static constexpr double changes = 0.2;  // of all the air, 1/s, at standstill; estimate

    /// K above the day's air at a speed of the air over the vehicle in m/s: what the same heat does
    /// to a flow of air that grows with that speed.
    double rise_at(double air_speed) const noexcept { return rise / draught(air_speed); }
    /// How much more air passes than at standstill, at a speed of the air over the vehicle in m/s.
    double draught(double air_speed) const noexcept {
        return 1 + std::abs(air_speed) / halving_speed;
    }
    /// The air under the bodywork, that the engine warms and the day's air replaces.
    std::array<media::LumpedNode, 1> thermal_nodes(
        const charge::Surroundings& around) const noexcept {
        const double capacity = volume * around.air_density *
                                media::dry_air().heat_capacity(around.ambient_temperature);
        const double replaced = changes * capacity;
        return {{{"air", capacity, replaced * rise, 0, 0, replaced * draught(around.road_speed),
                  around.ambient_temperature}}};
    }
    /// Pa above the day's air at the mouth of the intake.
    double ram(double air_density, double air_speed) const noexcept {
        return ram_recovery * air_density * air_speed * air_speed / 2;
    }

    static std::span<const fields::Row> rows() {
        using namespace fields;
        static constexpr Row table[] = {
            with_default("rise", "dT_u", at<&EngineBay::rise>, temperature_difference("K"), {0, 80},
                         10,
                         "How much warmer than the day the air around the engine is at standstill",
                         "common practice"),
            with_default("halving_speed", "v_u", at<&EngineBay::halving_speed>, speed("km/h"),
                         {5, 300}, 30, "Speed of the air over the vehicle that halves this rise",
                         "common practice"),
            with_default("intake_share", "x_u", at<&EngineBay::intake_share>, percent(), {0, 100},
                         0, "Share of the intake's air that comes from under the bodywork",
                         "an intake in the open air, chosen by the project"),
            with_default("volume", "V_u", at<&EngineBay::volume>, fields::volume("L"), {20, 5000},
                         150, "Volume of the air under the bodywork, which has to warm up",
                         "estimate"),
            with_default("ram_recovery", "k_r", at<&EngineBay::ram_recovery>, percent(), {0, 100},
                         0, "Share of the wind's dynamic pressure found at the mouth of the intake",
                         "a mouth that does not face the wind, chosen by the project"),
        };
        return table;
    }
};

}  // namespace windwall::vehicle
