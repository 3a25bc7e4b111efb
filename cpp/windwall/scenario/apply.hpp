#pragma once
#include "windwall/scenario/upgrade.hpp"

#include <span>
#include <string>
#include <vector>

/// Carrying out the verbs of a set of upgrades: verb by verb, and within a verb in the order of the
/// menu. What comes out does not depend on the order in which the upgrades were named.
namespace windwall::scenario {

/// Which value each open choice of a set takes, counted from 0, in the order of the menu. Choices
/// beyond the end take their first value.
using Choices = std::vector<std::size_t>;

/// Something that cannot be done in this vehicle, and by what.
struct Fault {
    std::size_t upgrade{};
    std::size_t action{};
    std::string sentence;
};

using Faults = std::vector<Fault>;

/// Replaces, removes and inserts parts.
void rearrange(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set, Faults& faults);

/// Sets, chooses, scales and adds, and checks everything that was touched.
void change_values(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                   const Choices& chosen, Faults& faults);

}  // namespace windwall::scenario
