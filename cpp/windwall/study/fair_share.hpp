#pragma once
#include "windwall/study/allowed_sets.hpp"

#include <functional>
#include <vector>

namespace windwall::study {

/// What each member of a set is worth, by number of upgrade; zero outside the set.
struct Shares {
    std::vector<double> share;
    bool reachable = true;  // some order of the set keeps every prefix allowed
};

/// The mean, over all orders of `target` whose every prefix is allowed, of what each upgrade adds
/// when its turn comes. Exact, by counting paths through the subsets of the target: up to 16
/// upgrades the counts stay below 2^53. Sums to value(target) - value(empty).
///
/// Where nothing is restricted this is the Shapley value: L. S. Shapley, "A value for n-person
/// games", Contributions to the Theory of Games II (1953).
Shares fair_share(Set target, std::size_t upgrades, const std::function<bool(Set)>& allowed,
                  const std::function<double(Set)>& value);

}  // namespace windwall::study
