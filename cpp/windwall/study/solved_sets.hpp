#pragma once
#include "windwall/study/ranking.hpp"

#include <limits>
#include <optional>
#include <unordered_map>
#include <vector>

namespace windwall::study {

/// The solved sets, found by their members. Refers to the list, which has to stay.
class SolvedSets {
public:
    explicit SolvedSets(const std::vector<SetResult>& sets) : sets_(&sets) {
        for (std::size_t i = 0; i < sets.size(); ++i)
            by_set_.emplace(sets[i].set, i);
    }
    std::optional<std::size_t> index(Set set) const {
        const auto found = by_set_.find(set);
        return found == by_set_.end() ? std::nullopt : std::optional(found->second);
    }
    const SetResult* find(Set set) const {
        const auto found = index(set);
        return found ? &(*sets_)[*found] : nullptr;
    }
    /// NaN where there is none.
    double speed(Set set, std::size_t anchor) const {
        const SetResult* result = find(set);
        return result != nullptr ? result->speed[anchor] : std::numeric_limits<double>::quiet_NaN();
    }
    /// NaN also where its pull ends without an answer.
    double whole_speed(Set set, std::size_t anchor) const {
        const SetResult* result = find(set);
        return result == nullptr || result->ends_early(anchor)
                   ? std::numeric_limits<double>::quiet_NaN()
                   : result->speed[anchor];
    }

private:
    const std::vector<SetResult>* sets_;
    std::unordered_map<Set, std::size_t> by_set_;
};

}  // namespace windwall::study
