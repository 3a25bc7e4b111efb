#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace windwall::engine {

/// The shape above the piston, with the valves that go with it.
enum class Chamber {
    unknown,
    side_valve,
    two_valve_wedge,
    two_valve_hemispherical,
    four_valve_pent_roof
};
enum class CooledBy { unknown, air, liquid, oil_and_air };
/// What an engine was made for.
enum class Duty { unknown, work, road, sport, racing };
enum class MixtureBy { unknown, carburettor, ported_injection };
enum class Silencing { unknown, muffled, open };

/// What a builder knows of an engine at sight. Each word narrows what the file leaves out.
struct Design {
    static constexpr std::string_view description =
        "What a builder knows of the engine at sight, each word if it is known. They choose what "
        "stands in for values of the engine that are not stated, and how well that is known. Where "
        "all are unknown the usual values stand in.";
    static constexpr std::size_t words = 5;

    Chamber chamber = Chamber::unknown;
    CooledBy cooling = CooledBy::unknown;
    Duty duty = Duty::unknown;
    MixtureBy mixture = MixtureBy::unknown;
    Silencing exhaust = Silencing::unknown;

    /// The words by number, in the order of the rows; 0 where one is unknown.
    constexpr std::array<std::size_t, words> numbers() const noexcept {
        return {static_cast<std::size_t>(chamber), static_cast<std::size_t>(cooling),
                static_cast<std::size_t>(duty), static_cast<std::size_t>(mixture),
                static_cast<std::size_t>(exhaust)};
    }
    /// The same with one of them by its number.
    Design with(std::size_t which, std::size_t word) const noexcept;
    /// Whether any word is known.
    constexpr bool known() const noexcept { return *this != Design{}; }
    /// Whether it has every word that is known of another.
    bool has(const Design& other) const noexcept;

    constexpr bool operator==(const Design&) const = default;
    static std::span<const fields::Row> rows();
};

/// How many words there are for each, unknown among them.
std::array<std::size_t, Design::words> word_counts() noexcept;

}  // namespace windwall::engine

template <>
struct windwall::fields::Names<windwall::engine::Chamber> {
    static constexpr std::array<std::string_view, 5> names{
        "unknown", "side_valve", "two_valve_wedge", "two_valve_hemispherical",
        "four_valve_pent_roof"};
};

template <>
struct windwall::fields::Names<windwall::engine::CooledBy> {
    static constexpr std::array<std::string_view, 4> names{"unknown", "air", "liquid",
                                                           "oil_and_air"};
};

template <>
struct windwall::fields::Names<windwall::engine::Duty> {
    static constexpr std::array<std::string_view, 5> names{"unknown", "work", "road", "sport",
                                                           "racing"};
};

template <>
struct windwall::fields::Names<windwall::engine::MixtureBy> {
    static constexpr std::array<std::string_view, 3> names{"unknown", "carburettor",
                                                           "ported_injection"};
};

template <>
struct windwall::fields::Names<windwall::engine::Silencing> {
    static constexpr std::array<std::string_view, 3> names{"unknown", "muffled", "open"};
};
