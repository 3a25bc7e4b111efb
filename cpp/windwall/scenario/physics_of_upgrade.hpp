#pragma once
#include "windwall/fields/provenance.hpp"
#include "windwall/scenario/upgrade.hpp"

namespace windwall::scenario {

/// What an upgrade does and takes, in SI with sigmas; its title left out.
fields::Json physics_of(const Upgrade& upgrade, const Menu& menu, const fields::Provenance& notes);

}  // namespace windwall::scenario
