#pragma once
#include "windwall/scenario/choices.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::study {

/// Which value won a choice that an upgrade leaves open.
struct Chosen {
    static constexpr std::string_view description = "The value that a choice of an upgrade takes.";
    std::string upgrade;           // id
    std::string address;           // of the input
    std::size_t place{};           // of the value among those on offer, from 0
    std::optional<double> number;  // SI; none where it is a word, a list, a table
    std::string text;              // as a file has it
    std::string dimension;         // with the unit that it is usually shown in
    std::string unit;
    bool counted = false;  // as teeth are

    static std::span<const fields::Row> rows();
};

/// Every open choice of a set with the value that it takes, in the order of the menu; none where
/// the choices were not resolved.
std::vector<Chosen> chosen_values(const scenario::Scenario& scenario, scenario::UpgradeSet set,
                                  const scenario::Choices& choices);

/// The fastest values of a set, found by solving; what is wanted is not varied.
scenario::Choices fastest_choices(const scenario::Scenario& scenario, scenario::UpgradeSet set,
                                  const scenario::Wanted& wanted);

}  // namespace windwall::study
