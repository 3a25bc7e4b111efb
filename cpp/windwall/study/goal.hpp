#pragma once
#include "windwall/study/rank.hpp"

namespace windwall::study {

/// What a vehicle lacks to a speed, found by solving again until it has it.
Missing missing_to(const vehicle::Vehicle& vehicle, double speed);

}  // namespace windwall::study
