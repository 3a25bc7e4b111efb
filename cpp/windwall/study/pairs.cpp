#include "windwall/study/pairs.hpp"

#include "windwall/study/recommend.hpp"

#include <cmath>
#include <limits>

namespace windwall::study {
namespace {

/// Two upgrades with what both require; with one of the two only, and with neither.
struct Pair {
    Set both, first, second, neither;
};

Pair pair_of(const Relations& relations, std::size_t i, std::size_t j) {
    const Set both = relations.required[i] | relations.required[j] | only(i) | only(j);
    return {both, both & ~only(j), both & ~only(i), both & ~(only(i) | only(j))};
}

/// What the second adds to nothing and the first to the second; NaN where a set is not allowed, as
/// where one of the two needs the other, and where a pull that ends without an answer would be
/// compared with a whole one.
Partner partner(const SolvedSets& solved, const Pair& pair, std::size_t place, std::string id) {
    Partner made{std::move(id), place, {}, {}, {}};
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        const auto speed = [&](Set set) { return solved.speed(set, anchor); };
        const auto whole = [&](Set set) { return solved.whole_speed(set, anchor); };
        made.together[anchor] = speed(pair.both) - speed(0);
        made.beside[anchor] = whole(pair.both) - whole(pair.second);
        made.interaction[anchor] = made.beside[anchor] - (whole(pair.first) - whole(pair.neither));
    }
    return made;
}

/// A pair that may be named, and what it costs.
struct Candidate {
    Partner partner;
    double cost{};
};

/// The highest, by the middle anchor; of those that are as high the cheapest. Nothing that is no
/// more than `least`, and nothing that is no number.
std::optional<Partner> highest(const std::vector<Candidate>& candidates,
                               const std::function<double(const Partner&)>& worth, double least) {
    double most = -std::numeric_limits<double>::infinity();
    for (const Candidate& one : candidates)
        if (worth(one.partner) > most) most = worth(one.partner);
    const Candidate* best = nullptr;
    for (const Candidate& one : candidates) {
        const double value = worth(one.partner);
        if (!(value > least && value >= most - same_speed)) continue;
        const bool as_cheap = best && one.cost == best->cost;
        if (!best || one.cost < best->cost || (as_cheap && value > worth(best->partner)))
            best = &one;
    }
    return best ? std::optional(best->partner) : std::nullopt;
}

void name_partners(const std::vector<Candidate>& candidates, UpgradeGain& gain) {
    const auto together = [](const Partner& it) { return it.together[middle]; };
    const auto helps = [](const Partner& it) { return it.interaction[middle]; };
    const auto hinders = [](const Partner& it) { return -it.interaction[middle]; };
    gain.best_pair = highest(candidates, together, -std::numeric_limits<double>::infinity());
    gain.most_helped = highest(candidates, helps, 0);
    gain.most_hindered = highest(candidates, hinders, 0);
}

}  // namespace

void add_partners(const Relations& relations, const SolvedSets& solved,
                  const std::function<bool(const SetResult&)>& counts,
                  std::vector<UpgradeGain>& gains) {
    for (std::size_t i = 0; i < gains.size(); ++i) {
        std::vector<Candidate> candidates;
        for (std::size_t j = 0; j < gains.size(); ++j) {
            if (i == j) continue;
            const Pair pair = pair_of(relations, i, j);
            const auto place = solved.index(pair.both);
            const SetResult* both = solved.find(pair.both);
            if (!both || !counts(*both)) continue;
            candidates.push_back({partner(solved, pair, *place, gains[j].id), both->cost});
        }
        name_partners(candidates, gains[i]);
    }
}

}  // namespace windwall::study
