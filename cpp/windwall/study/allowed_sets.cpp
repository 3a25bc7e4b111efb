#include "windwall/study/allowed_sets.hpp"

namespace windwall::study {

Relations close(Relations stated) {
    const std::size_t n = stated.size();
    for (std::size_t through = 0; through < n; ++through) {
        for (Set& needs : stated.needs) {
            if (holds(needs, through)) needs |= stated.needs[through];
        }
    }
    for (std::size_t a = 0; a < n; ++a) {
        for (std::size_t b = 0; b < n; ++b) {
            if (holds(stated.bars[a], b)) stated.bars[b] |= only(a);
        }
    }
    return stated;
}

bool allowed(const Relations& relations, Set set) {
    for (std::size_t i = 0; i < relations.size(); ++i) {
        if (!holds(set, i)) continue;
        if (!within(relations.needs[i], set) || (relations.bars[i] & set) != 0) return false;
    }
    return true;
}

std::vector<Set> allowed_sets(const Relations& relations) {
    std::vector<Set> sets;
    for (Set set = 0; set <= relations.everything(); ++set) {
        if (allowed(relations, set)) sets.push_back(set);
    }
    return sets;
}

Set without(const Relations& relations, Set set, std::size_t upgrade) {
    Set left = set & ~only(upgrade);
    for (std::size_t i = 0; i < relations.size(); ++i) {
        if (holds(relations.needs[i], upgrade)) left &= ~only(i);
    }
    return left;
}

}  // namespace windwall::study
