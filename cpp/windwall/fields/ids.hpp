#pragma once
#include "windwall/fields/member.hpp"

#include <set>
#include <string>
#include <string_view>

namespace windwall::fields {

/// The ids of a document: one word each, each word once, and no word that is a key somewhere.
class Ids {
public:
    /// Keeps the keys of every row that can be reached from here out of the ids.
    explicit Ids(const GroupType& root) { reserve(root); }

    void reserve(std::string_view key) { keys_.emplace(key); }
    void reserve(const GroupType& group);

    /// Empty, or why this cannot be an id.
    std::string violation(std::string_view id) const;
    /// Empty, or why this is no word that any id could be.
    static std::string word_violation(std::string_view id);
    void take(std::string_view id) { taken_.emplace(id); }

private:
    void reserve_types(const TaggedType& tagged);

    std::set<std::string, std::less<>> keys_;
    std::set<std::string, std::less<>> taken_;
    std::set<const void*> seen_;
};

}  // namespace windwall::fields
