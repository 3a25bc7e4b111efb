#pragma once
#include "windwall/solve/results/caution.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <string>
#include <vector>

namespace windwall::solve {

/// What the class of a part or an engine says to look at, where its results in `now` are beyond
/// it; `address` is the part's own.
std::vector<Caution> declared_cautions(const fields::GroupType& kind, const std::string& address,
                                       const OperatingPoint& now);

}  // namespace windwall::solve
