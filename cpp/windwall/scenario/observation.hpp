#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::scenario {

/// What the vehicle was doing when something was observed.
enum class Doing { top_speed, full_throttle, held_speed, standing_start, coast_down, jar };

/// Which way a road was driven.
enum class Way { there, back };

/// What was heard of knock.
enum class Heard { not_listened_for, not_heard, at_the_edge, heard };

/// Something the builder has seen the vehicle do. Each number may say how well it is known.
struct Observation {
    static constexpr std::string_view description =
        "Something the vehicle was seen to do, with how well each number is known.";
    Doing what = Doing::top_speed;
    std::optional<double> speed;                // m/s
    std::optional<double> gear;                 // from 1
    std::optional<double> engine_speed;         // rad/s
    std::optional<double> boost;                // Pa above the local air
    std::optional<double> charge_temperature;   // K, in the manifold
    std::optional<double> inlet_depression;     // Pa below the local air, at a blower's inlet
    std::optional<double> head_temperature;     // K
    std::optional<double> exhaust_temperature;  // K, behind the port
    std::optional<double> lambda;
    Heard knock = Heard::not_listened_for;
    std::optional<double> retard;     // rad after the spark of best torque
    std::optional<double> fuel_used;  // m3, over a distance or a time
    std::optional<double> distance;   // m
    std::optional<double> time;       // s
    std::string part;                 // id of the nozzle that ran into a jar
    std::optional<double> pressure;   // Pa across it
    std::optional<double> caught;     // m3 in the jar
    Way way = Way::there;             // of a coast-down
    fields::Columns coasting;         // time in s, speed in m/s

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

/// Reads the list of a file; entries are addressed by number, and name parts of the vehicle.
std::vector<Observation> read_observations(const fields::Cursor& list,
                                           const vehicle::Vehicle& vehicle);

}  // namespace windwall::scenario

template <>
struct windwall::fields::Names<windwall::scenario::Doing> {
    static constexpr std::array<std::string_view, 6> names{"top speed",  "full throttle",
                                                           "held speed", "standing start",
                                                           "coast-down", "nozzle into a jar"};
};

template <>
struct windwall::fields::Names<windwall::scenario::Way> {
    static constexpr std::array<std::string_view, 2> names{"there", "back"};
};

template <>
struct windwall::fields::Names<windwall::scenario::Heard> {
    static constexpr std::array<std::string_view, 4> names{"not listened for", "not heard",
                                                           "at the edge", "heard"};
};
