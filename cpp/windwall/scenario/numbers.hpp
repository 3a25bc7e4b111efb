#pragma once
#include "windwall/scenario/scenario.hpp"

#include <span>
#include <string>
#include <vector>

/// The numbers of a scenario that are not known exactly, so that a study can draw them: those of
/// the vehicle and those that the upgrades bring, each under its own address, so that a draw of one
/// is the same in every set of upgrades.
namespace windwall::scenario {

struct Uncertain {
    std::string address;
    double value{};  // SI
    double sigma{};  // SI, above zero
    double low{};    // of the range it is cut at, SI; infinite where there is none
    double high{};
};

/// All numbers with a sigma, given or of a default: first the vehicle's in the order of its rows,
/// then upgrade by upgrade what it replaces, inserts, sets, lets choose, scales by and adds.
std::vector<Uncertain> uncertain_numbers(const Scenario& scenario);

/// The same scenario with other values for these numbers, in their order. What they no longer
/// allow shows when a set is installed.
Scenario with_numbers(const Scenario& scenario, std::span<const double> values);

}  // namespace windwall::scenario
