#pragma once
#include "windwall/scenario/relations.hpp"

#include <vector>

namespace windwall::study {

using scenario::holds;
using scenario::only;
using scenario::Relations;

/// A set of upgrades: bit i is the i-th of those that are considered.
using Set = scenario::UpgradeSet;

constexpr bool within(Set inner, Set outer) { return (inner & ~outer) == 0; }

/// Whether every member has what it requires and none excludes another. The relations are closed.
bool allowed(const Relations& relations, Set set);

/// All allowed sets in rising order, the empty one first.
std::vector<Set> allowed_sets(const Relations& relations);

/// The set without an upgrade and without everything that requires it.
Set without(const Relations& relations, Set set, std::size_t upgrade);

}  // namespace windwall::study
