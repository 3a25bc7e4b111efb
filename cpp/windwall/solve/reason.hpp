#pragma once
#include "windwall/solve/pull.hpp"
#include "windwall/solve/top_speed.hpp"

#include <array>
#include <string>
#include <string_view>

/// The words for how a solve ended, with its numbers.
namespace windwall::solve {

/// Why a point has no answer, or what its answer is worth.
std::string sentence(const Point& point);

/// What may bind at the summit. The words are those of results.
inline constexpr std::array<std::string_view, 5> binding_names{"drag", "rev_limit", "grip", "knock",
                                                               "standstill"};
/// Which of them does.
std::string_view limited_by(const Summit& summit);

/// Where the climb ends and why.
std::string sentence(const TopSpeed& found);

/// Which condition would bind next and how far away it is.
std::string next_to_bind(const Summit& summit, double highest_engine_speed, double grip_limit);

}  // namespace windwall::solve
