#pragma once
#include "windwall/scenario/scenario.hpp"

#include <string>

namespace windwall::scenario {

/// The text of a scenario file: keys in the order of their rows, units and ± as typed, defaults
/// that nobody stated left out. Loading and saving it again gives the same text.
std::string save(const Scenario& scenario);

}  // namespace windwall::scenario
