#pragma once
#include "windwall/solve/pull.hpp"
#include "windwall/solve/top_speed.hpp"

#include <string>

/// The words for how a solve ended, with its numbers.
namespace windwall::solve {

/// Why a point has no answer, or what its answer is worth.
std::string sentence(const Point& point);

/// One word for what binds at the summit: drag, knock, rev_limit, grip or standstill.
std::string limited_by(const Summit& summit);

/// Where the climb ends and why.
std::string sentence(const TopSpeed& found);

/// Which condition would bind next and how far away it is.
std::string next_to_bind(const Summit& summit, double highest_engine_speed, double grip_limit);

}  // namespace windwall::solve
