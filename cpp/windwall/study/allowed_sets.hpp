#pragma once
#include <cstdint>
#include <vector>

namespace windwall::study {

/// A set of upgrades: bit i is upgrade i of the menu.
using Set = std::uint32_t;

constexpr Set only(std::size_t upgrade) { return Set{1} << upgrade; }
constexpr bool holds(Set set, std::size_t upgrade) { return (set >> upgrade & 1) != 0; }
constexpr bool within(Set inner, Set outer) { return (inner & ~outer) == 0; }

/// Who needs whom and who bars whom, by number of upgrade.
struct Relations {
    std::vector<Set> needs;  // closed: the needs of needs are in it
    std::vector<Set> bars;   // symmetric

    std::size_t size() const { return needs.size(); }
    Set everything() const { return only(size()) - 1; }
};

/// Closes the needs over themselves and makes the bars symmetric.
Relations close(Relations stated);

/// Whether every member has what it needs and none bars another.
bool allowed(const Relations& relations, Set set);

/// All allowed sets in rising order, the empty one first.
std::vector<Set> allowed_sets(const Relations& relations);

/// The set without an upgrade and without everything that needs it.
Set without(const Relations& relations, Set set, std::size_t upgrade);

}  // namespace windwall::study
