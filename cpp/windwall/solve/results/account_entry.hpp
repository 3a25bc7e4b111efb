#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <span>
#include <string>

namespace windwall::solve {

/// What power is there for, or becomes.
enum class PowerUse {
    fuel,
    indicated,
    rubbing,
    pumping,
    accessories,
    belt,    // of a blower
    shaft,   // of a blower
    casing,  // of a blower
    part,    // lost in a part, whatever becomes of it
    crank_slowing,
    tyre_slip,
    rolling,
    air,
    grade,
    acceleration,
    road,
    walls,
    unburnt_fuel,
    exhaust,
};

/// One line of an account of power.
struct AccountEntry {
    static constexpr std::string_view description = "One line of an account of power.";
    PowerUse use{};
    double watts{};
    std::string part{};  // id of the part it is in, where it is in one

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve

template <>
struct windwall::fields::Names<windwall::solve::PowerUse> {
    static constexpr std::array<std::string_view, 19> names{
        "fuel",      "indicated", "rubbing",      "pumping", "accessories",
        "belt",      "shaft",     "casing",       "part",    "crank_slowing",
        "tyre_slip", "rolling",   "air",          "grade",   "acceleration",
        "road",      "walls",     "unburnt_fuel", "exhaust"};
    static_assert(names.size() == static_cast<std::size_t>(windwall::solve::PowerUse::exhaust) + 1);
};
