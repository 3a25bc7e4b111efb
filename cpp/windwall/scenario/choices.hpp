#pragma once
#include "windwall/fields/expected.hpp"
#include "windwall/scenario/apply.hpp"
#include "windwall/scenario/given.hpp"
#include "windwall/scenario/scenario.hpp"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace windwall::scenario {

/// A choice that a set of upgrades leaves open: whose it is, and what it may take.
struct OpenChoice {
    std::size_t upgrade{};
    const Choose* choice{};
};

/// Those of a set, in the order of the menu.
std::vector<OpenChoice> open_choices(const Menu& menu, UpgradeSet set);

/// Where a value stands among those on offer.
struct Place {
    std::size_t from_0{};
};

/// A value that somebody states for a choice; no address where its upgrade has only one.
struct StatedChoice {
    std::string upgrade;
    std::string address;
    std::variant<Given, Place> value;
};

/// Which value each open choice has to take, from 0; nothing where any will do.
using Wanted = std::vector<std::optional<std::size_t>>;

/// Where stated values stand among those on offer, or why one of them does not.
fields::Expected<Wanted> wanted_choices(const Scenario& scenario, UpgradeSet set,
                                        std::span<const StatedChoice> stated);

/// Every combination of the open choices of a set that can be installed, in order, the firsts
/// first. What is wanted is not varied.
using ChoiceUse = std::function<void(vehicle::Vehicle fitted, const Choices& chosen)>;
void each_choice(const Scenario& scenario, UpgradeSet set, const ChoiceUse& use,
                 const Wanted& wanted = {});

/// Tries every combination of the open choices of a set and returns the fastest; the first of
/// equals, and all firsts where nothing is open or none has a speed. `speed` gives NaN for a
/// vehicle without one.
using ChoiceSpeed = std::function<double(const vehicle::Vehicle& fitted, const Choices& chosen)>;
Choices resolve_choice(const Scenario& scenario, UpgradeSet set, const ChoiceSpeed& speed,
                       const Wanted& wanted = {});

/// A value as a file has it: `27`, `38 mm`, `hold_margin`.
std::string file_text(const FieldPath& path, const Value& value);

}  // namespace windwall::scenario
