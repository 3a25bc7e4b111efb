#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <functional>
#include <map>
#include <string>
#include <string_view>

namespace windwall::scenario {

/// The rows of results, by address.
using Results = std::map<std::string, const fields::Row*, std::less<>>;

/// Adds every result that this vehicle has.
void collect_results(const vehicle::Vehicle& vehicle, Results& results);

/// The row of a result from its address alone, or null. The id of a part does not say its kind; all
/// kinds whose results have a number describe it by equal rows.
const fields::Row* result_row(std::string_view address);

/// Whether an address names a result of this vehicle.
bool is_result(const vehicle::Vehicle& vehicle, std::string_view address);

/// Why an address is no result of this vehicle, and which one is near.
std::string no_result(const vehicle::Vehicle& vehicle, std::string_view address);

}  // namespace windwall::scenario
