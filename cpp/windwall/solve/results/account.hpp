#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/account_entry.hpp"

#include <vector>

namespace windwall::solve {

/// Where the watts go: a total and what it is made of.
struct Account {
    AccountEntry total;
    std::vector<AccountEntry> entries;

    /// The total less its entries: what does not add up.
    double gap() const;
};

/// From the indicated power to the road: losses of the engine, of the blower, of each part of the
/// driveline and of the tyres, then rolling, air, slope, and what is left to accelerate. Each entry
/// comes from its own part. `balance` must be where the full-throttle point left it.
Account shaft_account(const vehicle::Balance& balance, const FullThrottlePoint& full_throttle);

/// From the fuel's heating value to what does work on the road and to every loss that ends as heat,
/// each once. The exhaust is what the engine's own energy balance makes of it, so that a gap shows
/// whatever was lost or counted twice between the cylinders and the road.
struct HeatAccount {
    Account account;
    double exhaust_temperature{};  // K, of the gas behind the valves
};
HeatAccount heat_account(const vehicle::Balance& balance, const FullThrottlePoint& full_throttle);

}  // namespace windwall::solve
