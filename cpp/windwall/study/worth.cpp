#include "windwall/study/worth.hpp"

#include "windwall/study/fair_share.hpp"

#include <cmath>
#include <limits>
#include <unordered_map>

namespace windwall::study {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

/// The solved sets, found by their members.
class Solved {
public:
    explicit Solved(const std::vector<SetResult>& sets) {
        for (const SetResult& result : sets)
            by_set_.emplace(result.set, &result);
    }
    const SetResult* find(Set set) const {
        const auto found = by_set_.find(set);
        return found == by_set_.end() ? nullptr : found->second;
    }
    double speed(Set set, std::size_t anchor) const {
        const SetResult* result = find(set);
        return result != nullptr ? result->speed[anchor] : nan;
    }

private:
    std::unordered_map<Set, const SetResult*> by_set_;
};

void add_shares(const Considered& considered, const Solved& solved, Set target,
                std::vector<UpgradeWorth>& worth) {
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        const Shares shares = fair_share(
            target, worth.size(), [&](Set set) { return std::isfinite(solved.speed(set, anchor)); },
            [&](Set set) { return solved.speed(set, anchor); });
        for (std::size_t k = 0; k < worth.size(); ++k) {
            const bool member = holds(target, k) && shares.reachable;
            worth[k].share[anchor] = member ? shares.share[k] : nan;
            const Set rest = without(considered.relations, target, k);
            worth[k].last[anchor] =
                holds(target, k) ? solved.speed(target, anchor) - solved.speed(rest, anchor) : nan;
        }
    }
}

std::string why_outside(const Considered& considered, const Solved& solved, Set target,
                        std::size_t k) {
    if ((considered.relations.bars[k] & target) != 0) return "excluded by what is fitted";
    const SetResult* with = solved.find(target | considered.relations.needs[k] | only(k));
    if (with == nullptr) return "excluded by what is fitted";
    if (!with->answered) return with->reason;
    if (!with->passed.empty()) return "would pass " + with->passed.front().limit.address;
    if (with->speed[middle] <= solved.speed(target, middle)) return "adds nothing to it";
    return "beyond the budget";
}

}  // namespace

std::vector<UpgradeWorth> worth_of_each(const Considered& considered, const Ranking& ranking) {
    const Solved solved(ranking.sets);
    std::vector<UpgradeWorth> worth(considered.upgrades.size());
    for (std::size_t k = 0; k < worth.size(); ++k) {
        const Set needs = considered.relations.needs[k];
        worth[k].upgrade = considered.upgrades[k];
        worth[k].last.fill(nan);
        worth[k].share.fill(nan);
        for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
            worth[k].alone[anchor] =
                solved.speed(needs | only(k), anchor) - solved.speed(needs, anchor);
        }
        const SetResult* alone = solved.find(needs | only(k));
        if (alone != nullptr) worth[k].passed = alone->passed;
    }
    if (!ranking.target) return worth;
    const Set target = ranking.sets[*ranking.target].set;
    add_shares(considered, solved, target, worth);
    for (std::size_t k = 0; k < worth.size(); ++k) {
        worth[k].in_target = holds(target, k);
        if (!worth[k].in_target) worth[k].outside = why_outside(considered, solved, target, k);
    }
    return worth;
}

}  // namespace windwall::study
