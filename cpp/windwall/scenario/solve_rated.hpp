#pragma once
#include "windwall/scenario/scenario.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

/// The rated figures of an engine, met by what the file leaves out.
namespace windwall::scenario {

/// The address of a value of the engine from the vehicle.
inline std::string of_engine(std::string_view address) { return "engine/" + std::string(address); }

/// Solves the stock engine so that it meets its rated figures, and anchors knock by the fuel that
/// its maker asks for, where nothing of the anchor is stated.
void solve_rated(Scenario& made, const fields::Provenance& notes);

/// Whether the rated figures of this scenario settled the value at an address.
bool is_solved(const Scenario& scenario, std::string_view address);

/// What they leave of its sigma, SI; empty where they did not settle it.
std::optional<double> solved_sigma(const Scenario& scenario, std::string_view address);

/// Writes down what was settled as values with their ± and how these err together, and lets go of
/// the rated figures: they are of the stock engine, and something is about to change. What is
/// known of an address that is told anew is no longer tied to the others.
void keep_solved(Scenario& scenario, std::span<const std::string> told_anew = {});

}  // namespace windwall::scenario
