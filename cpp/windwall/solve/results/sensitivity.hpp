#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <optional>
#include <span>

namespace windwall::solve {

/// The small changes that are made.
enum class Change {
    power_up,         // by 1 %
    drag_area_down,   // by 1 %
    mass_down,        // by 1 %
    charge_cooler,    // by 10 K
    octane_up,        // by one number
    gearing_shorter,  // by 1 %
    gearing_longer,   // by 1 %
};

/// What a small change would do to the speed; by solving again, with the change made.
struct Sensitivity {
    static constexpr std::string_view description =
        "What a small change would add to the speed, by solving again.";
    Change change{};
    std::optional<double> speed;  // m/s; empty where the changed vehicle has no answer

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve

template <>
struct windwall::fields::Names<windwall::solve::Change> {
    static constexpr std::array<std::string_view, 7> names{
        "power_up",  "drag_area_down",  "mass_down",     "charge_cooler",
        "octane_up", "gearing_shorter", "gearing_longer"};
};
