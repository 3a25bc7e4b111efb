#pragma once
#include "windwall/scenario/upgrade.hpp"

#include <cstddef>
#include <string>

namespace windwall::scenario {

/// Who requires whom and who excludes whom, by number of upgrade.
struct Relations {
    std::vector<UpgradeSet> required;
    std::vector<UpgradeSet> excluded;

    std::size_t size() const noexcept { return required.size(); }
};

/// What the required ones require is required too, and whoever is excluded excludes back.
Relations closed(Relations stated);

/// An entry under "requires" or "excludes" that names no upgrade that could stand there.
struct UnknownRelation {
    std::size_t upgrade{};
    std::string_view key;
    std::size_t entry{};
    std::string sentence;
};

/// Works out from the stated ids who requires whom and who excludes whom: what is
/// required is closed over itself, what is excluded is symmetric.
std::vector<UnknownRelation> relate(Menu& menu);

/// An upgrade together with everything it requires.
inline UpgradeSet with_required(const Menu& menu, std::size_t upgrade) {
    return only(upgrade) | menu[upgrade].required;
}

/// Empty, or why these upgrades may not stand together.
std::string refusal(const Menu& menu, UpgradeSet set);

}  // namespace windwall::scenario
