#pragma once
#include "windwall/scenario/install.hpp"

namespace windwall::scenario {

/// The notes of a scenario once a set of upgrades is fitted: those of new parts and values stand at
/// the addresses these now have, and what was scaled or added to says so with its new ±.
fields::Provenance installed_provenance(const Scenario& scenario, UpgradeSet set,
                                        const Choices& chosen);

}  // namespace windwall::scenario
