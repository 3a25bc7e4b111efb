#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/scenario.hpp"

#include <span>
#include <string>

/// A file counts in one currency, which is never turned into another.
namespace windwall::scenario {

/// The currency that the budget is stated in; empty where it is not stated.
std::string currency_of_budget(const fields::Provenance& notes);

/// The one currency of all costs, and of the budget; complains about a second one.
std::string read_currency(std::span<const fields::Cursor> cursors, std::string currency);

/// Of what is left of a scenario.
std::string currency_left(const Scenario& scenario);

/// Puts a sum that was read at an address in the currency of the file: a bare number counts in it,
/// and a text in another is complained about, unless nothing else is counted.
void count_in_currency(const Scenario& scenario, const std::string& address, bool bare,
                       fields::ReadContext& findings);

}  // namespace windwall::scenario
