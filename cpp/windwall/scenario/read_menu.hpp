#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/upgrade.hpp"

#include <string>
#include <vector>

namespace windwall::scenario {

struct MenuRead {
    Menu menu;
    std::string currency;
    std::vector<vehicle::Vehicle> layouts;  // of the vehicle as it is and of each upgrade
};

/// Reads the upgrades of a file over the vehicle it describes, and finds what is wrong with each,
/// between two that may stand together, and with the vehicle that each makes.
MenuRead read_menu(const fields::Cursor& list, const vehicle::Vehicle& vehicle);

}  // namespace windwall::scenario
