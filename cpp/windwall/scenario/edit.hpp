#pragma once
#include "windwall/scenario/given.hpp"
#include "windwall/scenario/install.hpp"
#include "windwall/scenario/load.hpp"

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace windwall::scenario {

/// What stands at an address: SI for numbers, the word for choices; nothing where an optional
/// number is empty, or where there is a table.
using Answer = std::variant<std::monostate, double, bool, std::string, std::vector<double>>;

/// Looks up an input by its address, or says what is wrong with the address.
fields::Expected<Answer> get(const Scenario& scenario, std::string_view address);

using Changes = std::vector<std::pair<std::string, Given>>;

/// A scenario with other values, or all that is wrong with them. Each brings its own ±. Upgrades
/// have to remain possible.
Loaded set(const Scenario& scenario, const Changes& changes);

/// A scenario whose vehicle has these upgrades fitted, or why that cannot be. Their values bring
/// their notes; what is scaled or added to combines both ± in quadrature. The menu keeps the
/// others, except those that are barred now or would no longer make a valid vehicle; limits on
/// parts that are gone go, and so do observations, which were made of another vehicle.
Loaded fit(const Scenario& scenario, std::span<const std::string> ids, const Choices& chosen = {});

/// The set that ids name, in whatever order; or which of them is unknown.
fields::Expected<UpgradeSet> set_of(const Menu& menu, std::span<const std::string> ids);

}  // namespace windwall::scenario
