#pragma once
#include "windwall/study/rank.hpp"

#include <array>
#include <optional>
#include <vector>

namespace windwall::study {

/// A set that may be named: it passes no limit and costs no more than the budget.
bool recommendable(const SetResult& result, const RankOptions& options);

std::optional<std::size_t> fastest_set(const std::vector<SetResult>& sets,
                                       const RankOptions& options);

/// How large a lead nobody can tell, and how well the knock anchor is known, in steps of the shift
/// between the three anchors.
struct Telling {
    double least_told{};
    double known_to{};
};

Telling telling_of(const scenario::Scenario& scenario, const RankOptions& options);

/// By how much one set is faster than another at a knock anchor one standard deviation lower, as
/// stated, and as much higher; straight lines between the anchors that are solved.
std::array<double, anchors> lead_of(const SetResult& leading, const SetResult& other,
                                    const Telling& telling);

/// The cheapest set over which the fastest has at none of these anchors a lead that can be told. Of
/// equally cheap ones the faster.
std::size_t cheapest_alike(const std::vector<SetResult>& sets, std::size_t fastest,
                           const Telling& telling, const RankOptions& options);

/// The sets of which each is faster than all that take no more of something, least of it first.
std::vector<std::size_t> best_by(const std::vector<SetResult>& sets, double SetResult::*price,
                                 const RankOptions& options);

}  // namespace windwall::study
