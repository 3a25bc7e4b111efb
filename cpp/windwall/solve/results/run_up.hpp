#pragma once
#include "windwall/fields/row.hpp"

#include <span>

namespace windwall::solve {

/// The run from standstill over a given road: in the gear it starts in until the clutch has ceased
/// to slip, then at every speed in the gear that accelerates most, shifting in no time.
struct RunUp {
    static constexpr std::string_view description =
        "The run from rest over the goal's road; no time is lost in shifts.";
    double speed{};
    double time{};
    long gear{};        // in use at the end of the road, from 1
    long start_gear{};  // in which it starts, from 1

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
