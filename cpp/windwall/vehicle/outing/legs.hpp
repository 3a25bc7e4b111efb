#pragma once
#include "windwall/fields/one_of.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/vehicle/engine_bay.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>

/// What is done with a vehicle one after the other. Every leg begins where the one before ended.
namespace windwall::vehicle {

/// What the engine does while the vehicle stands.
enum class StandingEngine { idling, off };

/// Standing, out of gear.
struct Idle {
    static constexpr std::string_view kind = "idle";
    static constexpr std::string_view description = "Standing with the engine idling.";
    static constexpr bool from_standstill = true;
    double time{};                       // s
    std::optional<double> engine_speed;  // rad/s

    static std::span<const fields::Row> rows();
};

/// From standstill until the clutch, or the belt of a variator, holds without slipping.
struct Launch {
    static constexpr std::string_view kind = "launch";
    static constexpr std::string_view description =
        "From standstill, at full throttle, until the clutch no longer slips.";
    static constexpr bool from_standstill = true;
    std::optional<double> engine_speed;  // rad/s, held while it slips

    static std::span<const fields::Row> rows();
};

/// Full throttle through the gears. From standstill it launches first. One end is stated.
struct FullThrottle {
    static constexpr std::string_view kind = "full_throttle";
    static constexpr std::string_view description =
        "Full throttle through the gears, launching first where the vehicle stands.";
    std::optional<double> to_speed;         // m/s over the ground
    std::optional<double> for_distance;     // m
    std::optional<double> for_time;         // s
    std::optional<double> to_engine_speed;  // rad/s

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

/// A road speed, held by the pedal. One end is stated.
struct HoldSpeed {
    static constexpr std::string_view kind = "hold_speed";
    static constexpr std::string_view description = "A road speed held by the pedal.";
    double speed{};                      // m/s over the ground
    std::optional<double> for_time;      // s
    std::optional<double> for_distance;  // m

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

/// The pedal released. One end is stated.
struct Coast {
    static constexpr std::string_view kind = "coast";
    static constexpr std::string_view description = "The pedal released, in gear or out of it.";
    bool in_gear = false;
    std::optional<double> to_speed;      // m/s over the ground
    std::optional<double> for_distance;  // m
    std::optional<double> for_time;      // s

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

/// Brakes to a standstill, and stands.
struct Stop {
    static constexpr std::string_view kind = "stop";
    static constexpr std::string_view description =
        "Braking to a standstill, and standing to cool. A run begins anew behind it.";
    double deceleration = 3;  // m/s2
    double time{};            // s, standing
    StandingEngine engine = StandingEngine::idling;
    Hood hood = Hood::closed;
    bool turn_round = false;  // the next run comes back along the road, slope and wind reversed

    /// What covers the engine while it stands: what was open stays open.
    Hood hood_over(Hood of_vehicle) const noexcept {
        return of_vehicle == Hood::open ? Hood::open : hood;
    }
    static std::span<const fields::Row> rows();
};

using Leg = fields::OneOf<Idle, Launch, FullThrottle, HoldSpeed, Coast, Stop>;

}  // namespace windwall::vehicle

template <>
struct windwall::fields::Names<windwall::vehicle::StandingEngine> {
    static constexpr std::array<std::string_view, 2> names{"idling", "off"};
};
