#pragma once
#include "windwall/scenario/scenario.hpp"

#include <string_view>

/// What a file says in one place of values that it leaves out in another.
namespace windwall::scenario {

/// Puts what design and rated figures of the engine tell wherever nothing is stated, and what the
/// knock anchor is known to. Where nothing is described every usual value stays.
void complete(Scenario& made, const fields::Provenance& notes);

/// The same for a vehicle that a set of upgrades made of that of the scenario: what neither states
/// moves with the design, and what the rated figures told of the stock engine stays.
void complete_installed(const Scenario& scenario, vehicle::Vehicle& after, UpgradeSet set);

/// The vehicle of a scenario with the usual value again wherever that was not stated.
vehicle::Vehicle as_stated(const Scenario& scenario);

/// The design of the engine with all that the file tells of it; unknown for a torque curve.
engine::Design design_of(const vehicle::Vehicle& vehicle, const fields::Provenance& notes);

/// How well a number of the vehicle is known, SI: what the file says, exactly where it says nothing
/// beside a given value, else what rated figures and design tell, else the row's own.
double sigma_of(const Scenario& scenario, std::string_view address, const fields::Row& row);

}  // namespace windwall::scenario
