#pragma once
#include "windwall/fields/cursor.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::scenario {

/// What the vehicle was doing when something was observed.
enum class Doing { top_speed, full_throttle };

/// What was heard of knock.
enum class Heard { not_listened_for, not_heard, at_the_edge, heard };

/// Something the builder has seen the vehicle do. Each number may say how well it is known.
struct Observation {
    static constexpr std::string_view description =
        "Something the vehicle was seen to do, with how well each number is known.";
    Doing what = Doing::top_speed;
    std::optional<double> speed;               // m/s
    std::optional<double> gear;                // from 1
    std::optional<double> engine_speed;        // rad/s
    std::optional<double> boost;               // Pa above the local air
    std::optional<double> charge_temperature;  // K, in the manifold
    Heard knock = Heard::not_listened_for;
    std::optional<double> retard;  // rad after the spark of best torque

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

/// Reads the list of a file; entries are addressed by number.
std::vector<Observation> read_observations(const fields::Cursor& list);

}  // namespace windwall::scenario

template <>
struct windwall::fields::Names<windwall::scenario::Doing> {
    static constexpr std::array<std::string_view, 2> names{"top speed", "full throttle"};
};

template <>
struct windwall::fields::Names<windwall::scenario::Heard> {
    static constexpr std::array<std::string_view, 4> names{"not listened for", "not heard",
                                                           "at the edge", "heard"};
};
