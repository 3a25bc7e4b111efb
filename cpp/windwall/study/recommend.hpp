#pragma once
#include "windwall/study/rank.hpp"

#include <array>
#include <optional>
#include <vector>

namespace windwall::study {

/// m/s, less than the last digit that is shown: where a rev limit ends two sets they are as fast.
inline constexpr double same_speed = 0.05 / 3.6;

/// A set that may be named: its pull has an answer to the end, it passes no limit and costs no more
/// than the budget.
bool recommendable(const SetResult& result, const RankOptions& options);

/// Of those as fast as the fastest the cheapest.
std::optional<std::size_t> fastest_set(const std::vector<SetResult>& sets,
                                       const RankOptions& options);

/// The largest lead that nobody can tell, m/s.
double least_told(const scenario::Scenario& scenario);

/// By how much one set is faster than another, at each knock anchor.
std::array<double, anchors> lead_of(const SetResult& leading, const SetResult& other);

/// The cheapest set over which the fastest has at no knock anchor a lead of more than `unseen`.
/// Of equally cheap ones the faster.
std::size_t cheapest_alike(const std::vector<SetResult>& sets, std::size_t fastest, double unseen,
                           const RankOptions& options);

/// The cheapest set that is as fast as a speed.
std::optional<std::size_t> cheapest_to(const std::vector<SetResult>& sets, double speed,
                                       const RankOptions& options);

/// The sets of which each is faster than all that take no more of something, least of it first.
std::vector<std::size_t> best_by(const std::vector<SetResult>& sets, double SetResult::*price,
                                 const RankOptions& options);

}  // namespace windwall::study
