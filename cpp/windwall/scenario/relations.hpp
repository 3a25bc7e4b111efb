#pragma once
#include "windwall/scenario/upgrade.hpp"

#include <functional>
#include <string>

namespace windwall::scenario {

/// Called with an upgrade, the key ("requires" or "excludes"), the number of the entry, and what is
/// wrong with it.
using RelationComplaint =
    std::function<void(std::size_t, std::string_view, std::size_t, std::string)>;

/// Works out from the stated ids who requires whom and who excludes whom: what is
/// required is closed over itself, what is excluded is symmetric.
void relate(Menu& menu, const RelationComplaint& complain);

/// An upgrade together with everything it requires.
inline UpgradeSet with_required(const Menu& menu, std::size_t upgrade) {
    return only(upgrade) | menu[upgrade].required;
}

/// Empty, or why these upgrades may not stand together.
std::string refusal(const Menu& menu, UpgradeSet set);

}  // namespace windwall::scenario
