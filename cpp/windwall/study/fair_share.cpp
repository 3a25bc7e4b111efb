#include "windwall/study/fair_share.hpp"

namespace windwall::study {
namespace {

/// All subsets of a set in rising order, so that a subset comes before what contains it.
std::vector<Set> subsets(Set target) {
    std::vector<Set> found{0};
    for (Set set = 0; set != target;)
        found.push_back(set = (set - target) & target);
    return found;
}

/// How many allowed orders lead from the empty set to each subset, and from each to the target.
struct Paths {
    std::vector<double> to;
    std::vector<double> from;
};

Paths count(Set target, std::size_t upgrades, const std::vector<Set>& sets,
            const std::function<bool(Set)>& allowed) {
    Paths paths{std::vector<double>(target + std::size_t{1}), {}};
    paths.from = paths.to;
    paths.to[0] = 1;
    for (Set set : sets) {
        if (set == 0 || !allowed(set)) continue;
        for (std::size_t i = 0; i < upgrades; ++i) {
            if (holds(set, i)) paths.to[set] += paths.to[set & ~only(i)];
        }
    }
    paths.from[target] = 1;
    for (auto set = sets.rbegin(); set != sets.rend(); ++set) {
        if (*set == target || !allowed(*set)) continue;
        for (std::size_t i = 0; i < upgrades; ++i) {
            if (holds(target & ~*set, i)) paths.from[*set] += paths.from[*set | only(i)];
        }
    }
    return paths;
}

}  // namespace

Shares fair_share(Set target, std::size_t upgrades, const std::function<bool(Set)>& allowed,
                  const std::function<double(Set)>& value) {
    const std::vector<Set> sets = subsets(target);
    const Paths paths = count(target, upgrades, sets, allowed);
    Shares shares{std::vector<double>(upgrades), paths.to[target] > 0};
    if (!shares.reachable) return shares;

    for (Set set : sets) {
        if (paths.to[set] == 0) continue;
        for (std::size_t i = 0; i < upgrades; ++i) {
            if (!holds(target & ~set, i)) continue;
            const Set larger = set | only(i);
            const double orders = paths.to[set] * paths.from[larger];
            if (orders == 0 || !allowed(larger)) continue;
            shares.share[i] += orders / paths.to[target] * (value(larger) - value(set));
        }
    }
    return shares;
}

}  // namespace windwall::study
