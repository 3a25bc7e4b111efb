#pragma once
#include "windwall/fields/notes.hpp"
#include "windwall/scenario/upgrade.hpp"

namespace windwall::scenario {

/// What an upgrade does and takes, in SI with sigmas; its title left out.
fields::Json physics_of(const Upgrade& upgrade, const Menu& menu, const fields::Notes& notes);

}  // namespace windwall::scenario
