#include "windwall/study/pairs.hpp"

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
/// where one of the two needs the other.
Partner partner(const SolvedSets& solved, const Pair& pair, std::size_t place, std::string id) {
    Partner made{std::move(id), place, {}, {}, {}};
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        const auto speed = [&](Set set) { return solved.speed(set, anchor); };
        made.together[anchor] = speed(pair.both) - speed(0);
        made.beside[anchor] = speed(pair.both) - speed(pair.second);
        made.interaction[anchor] = made.beside[anchor] - (speed(pair.first) - speed(pair.neither));
    }
    return made;
}

/// Takes over what is higher, by the middle anchor; nothing that is no number.
void keep_higher(std::optional<Partner>& best, const Partner& other,
                 const std::function<double(const Partner&)>& worth, double least) {
    const double value = worth(other);
    if (std::isfinite(value) && value > (best ? worth(*best) : least)) best = other;
}

void consider_partner(const Partner& one, UpgradeGain& gain) {
    const auto together = [](const Partner& it) { return it.together[middle]; };
    const auto helps = [](const Partner& it) { return it.interaction[middle]; };
    const auto hinders = [](const Partner& it) { return -it.interaction[middle]; };
    keep_higher(gain.best_pair, one, together, -std::numeric_limits<double>::infinity());
    keep_higher(gain.most_helped, one, helps, 0);
    keep_higher(gain.most_hindered, one, hinders, 0);
}

}  // namespace

void add_partners(const Relations& relations, const SolvedSets& solved,
                  const std::function<bool(const SetResult&)>& counts,
                  std::vector<UpgradeGain>& gains) {
    for (std::size_t i = 0; i < gains.size(); ++i)
        for (std::size_t j = 0; j < gains.size(); ++j) {
            if (i == j) continue;
            const Pair pair = pair_of(relations, i, j);
            const auto place = solved.index(pair.both);
            if (!place || !counts(*solved.find(pair.both))) continue;
            consider_partner(partner(solved, pair, *place, gains[j].id), gains[i]);
        }
}

}  // namespace windwall::study
