#include "windwall/study/allowed_sets.hpp"

namespace windwall::study {

bool allowed(const Relations& relations, Set set) {
    for (std::size_t i = 0; i < relations.size(); ++i) {
        if (!holds(set, i)) continue;
        if (!within(relations.required[i], set) || (relations.excluded[i] & set) != 0) return false;
    }
    return true;
}

std::vector<Set> allowed_sets(const Relations& relations) {
    std::vector<Set> sets;
    for (Set set = 0; set < only(relations.size()); ++set) {
        if (allowed(relations, set)) sets.push_back(set);
    }
    return sets;
}

Set without(const Relations& relations, Set set, std::size_t upgrade) {
    Set left = set & ~only(upgrade);
    for (std::size_t i = 0; i < relations.size(); ++i) {
        if (holds(relations.required[i], upgrade)) left &= ~only(i);
    }
    return left;
}

}  // namespace windwall::study
