#pragma once
#include "windwall/scenario/scenario.hpp"

#include <string>

namespace windwall::scenario {

/// SHA-256 of everything a result can depend on, in 64 hexadecimal digits: the vehicle, the
/// upgrades, the limits and the observations in SI with their sigmas, defaults written out, the
/// format's version first. Titles, notes, reasons, and the units of files and screens are no part
/// of it.
std::string digest(const Scenario& scenario);

/// The text that is digested. [RFC 8785]
std::string digested_text(const Scenario& scenario);

}  // namespace windwall::scenario
