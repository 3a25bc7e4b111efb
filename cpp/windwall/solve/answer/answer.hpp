#pragma once
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/answer/margins.hpp"
#include "windwall/solve/answer/sensitivity.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/account.hpp"
#include "windwall/solve/results/caution.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <optional>
#include <string>
#include <vector>

namespace windwall::solve {

/// Everything a builder is told about one vehicle: how fast, why no faster, where the watts go,
/// what is passed on the way, and what a little of anything would be worth.
struct SpeedAnswer {
    TopSpeed found;
    std::string sentence;                 // always: how it ended, with numbers
    std::string_view limited_by;          // one of binding_names
    std::string gearing;                  // gear and belt at the equilibrium, in words
    std::string next;                     // what would bind next, and how far away it is
    std::optional<OperatingPoint> point;  // at the equilibrium
    std::optional<Account> shaft;
    std::optional<HeatAccount> heat;
    std::optional<Margins> margins;  // until nothing is left of the knock margin
    std::vector<Sensitivity> sensitivities;
    std::vector<LimitViolation> passed;
    std::vector<std::string> unrated;
    std::vector<Caution> cautions;
};

/// Top speed of a vehicle with its limits, explained.
SpeedAnswer answer_speed(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated = {});

/// The top speed and its point alone, for those who ask again and again: nothing is looked at on
/// the way up, and nothing is solved a second time to say what it is worth.
SpeedAnswer answer_speed_briefly(const vehicle::Vehicle& vehicle);

/// One operating point, explained.
struct PointAnswer {
    Point point;
    std::string sentence;
    std::optional<OperatingPoint> result;
    std::vector<Caution> cautions;
};
PointAnswer answer_point(const vehicle::Vehicle& vehicle, const vehicle::Condition& condition);

}  // namespace windwall::solve
