#pragma once
#include "windwall/solve/results/account.hpp"
#include "windwall/solve/results/binding.hpp"
#include "windwall/solve/results/caution.hpp"
#include "windwall/solve/results/ending.hpp"
#include "windwall/solve/results/limit_ahead.hpp"
#include "windwall/solve/results/limit_violation.hpp"
#include "windwall/solve/results/margins.hpp"
#include "windwall/solve/results/operating_point.hpp"
#include "windwall/solve/results/run_up.hpp"
#include "windwall/solve/results/sensitivity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace windwall::solve {

/// Everything a builder is told about one vehicle: how fast, why no faster, where the watts go,
/// what is passed on the way, and what a little of anything adds.
struct TopSpeedResult {
    static constexpr std::string_view description = "How fast, why no faster, and what it takes.";
    Ending ending;
    long points{};  // operating points solved
    Binding limited_by = Binding::standstill;
    std::optional<double> speed;  // the equilibrium, and what it has; empty of a standing vehicle
    std::optional<long> gear;     // from 1
    std::optional<double> engine_speed;
    std::optional<double> opening;
    std::optional<double> excess_force;
    std::optional<BeltPosition> belt;     // of a variator
    std::optional<NextBinding> next;      // empty where what binds says nothing of others
    std::optional<Tried> unanswered;      // what has no answer and ends the climb, or allows none
    std::optional<RunUp> run_up;          // only where the goal names a road
    std::optional<OperatingPoint> point;  // at the equilibrium
    std::vector<AccountEntry> shaft;
    std::vector<AccountEntry> heat;
    std::optional<double> exhaust_temperature;
    std::optional<Margins> margins;              // until nothing is left of the knock margin
    std::optional<double> margin_without_spray;  // octane numbers, with every jet blocked
    std::vector<Sensitivity> sensitivities;
    std::vector<LimitViolation> passed;
    std::vector<LimitAhead> ahead;  // the nearest first
    std::vector<std::string> unrated;
    std::vector<Caution> cautions;

    static std::span<const fields::Row> rows();
};

/// One operating point, explained.
struct PointResult {
    static constexpr std::string_view description = "The engine held at one condition.";
    Ending ending;
    double engine_speed{};
    double road_speed{};
    double opening{};
    std::optional<OperatingPoint> point;
    std::vector<Caution> cautions;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
