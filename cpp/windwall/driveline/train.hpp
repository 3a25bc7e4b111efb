#pragma once
#include "windwall/driveline/part.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace windwall::driveline {

/// All parts in the order the power meets them, from the crank to the wheels.
using Train = std::vector<fields::Entry<Part>>;

/// How many gears the train has: with two boxes in it, every pair of their gears; the box nearer to
/// the crank changes first as the gear counts up from 0.
std::size_t gears(const Train& train) noexcept;

/// Turns of the crank for one turn of the wheels.
double total_ratio(const Train& train, std::size_t gear) noexcept;

/// What reaches the wheels of what the crank gives. The watts that each part keeps go into `losses`
/// in the train's order, as far as it is long.
Shaft drive(const Train& train, const Shaft& crank, std::size_t gear,
            std::span<double> losses = {}) noexcept;

/// Moment of inertia of all parts as felt at the wheels, kg m2.
double inertia_at_wheels(const Train& train, std::size_t gear) noexcept;

/// Time without drive at a change of gear, s: that of the slowest box.
double shift_time(const Train& train) noexcept;

}  // namespace windwall::driveline
