// A top speed is where the vehicle stops getting faster, and says why: held against solved points
// in every gear, over vehicles of many kinds whose knock limit puts kinks and steps in the torque.

#include "windwall/numerics/root.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <string>

#include "dice.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using samples::Dice;
using vehicle::Vehicle;

constexpr double degree = std::numbers::pi / 180;

charge::Bypass opened_by_depression() {
    charge::Bypass made;
    made.area = 150e-6;
    return made;
}

std::vector<double> ratios(Dice& dice) {
    const int count = 1 + static_cast<int>(dice.between(0, 5.999));
    const double step =
        dice.between(0, 1) < 0.3 ? dice.between(1.001, 1.05) : dice.between(1.1, 1.7);
    std::vector<double> made{dice.between(0.9, 1.4)};
    for (int i = 1; i < count; ++i)
        made.insert(made.begin(), made.front() * step);
    return made;
}

Vehicle any_vehicle(Dice& dice) {
    Vehicle car = dice.between(0, 1) < 0.5 ? sample::cooled_cyclecar() : sample::cyclecar();
    if (dice.between(0, 1) < 0.4)
        car.charge_path.push_back({"rear", sample::throttle(dice.between(20e-3, 40e-3))});
    if (dice.between(0, 1) < 0.3)
        car.charge_path.insert(car.charge_path.begin() + 3, {"bypass", opened_by_depression()});
    car.charge_path[2].part.as<charge::PositiveBlower>()->drive_ratio = dice.between(0.9, 2.2);
    auto& engine = *car.engine.as<engine::Cylinder>();
    engine.knock_anchor.octane_number += dice.between(-5, 30);
    engine.spark.most_retard = dice.between(5, 40) * degree;
    engine.rev_limit = dice.between(4500, 8500) * rpm;
    car.body.drag_area = dice.between(0.2, 1.2);
    car.body.mass = dice.between(150, 600);
    car.tyres.grip = dice.between(0.4, 1.2);
    car.goal.grade = dice.between(-0.01, 0.04);
    car.driveline = sample::four_speed(dice.between(2.5, 6));
    car.driveline[1].part.as<driveline::Gearbox>()->ratios = ratios(dice);
    if (dice.between(0, 1) < 0.2) car = sample::belt_driven(car, dice.between(2.8, 9));
    return car;
}

/// The solved point of a gear at a road speed; none where the gear is too short or too long.
std::optional<FullThrottlePoint> solved_at(VehicleSolver& solver, std::size_t gear, double speed) {
    const GearRange& range = solver.gear_range(gear);
    FullThrottlePoint point = solver.at(range.at(range.end()));
    if (!point.point.outcome.answered() || point.road_speed < speed) return std::nullopt;
    const auto off = [&](double along) {
        point = solver.at(range.at(along));
        return point.road_speed - speed;
    };
    if (off(0) > 0) return std::nullopt;
    const auto root = numerics::find_root(off, 0, range.end(), {1e-9, 0, 80});
    off(root.x);
    return point.point.outcome.answered() ? std::optional(point) : std::nullopt;
}

std::string said(int number, const TopSpeed& found) {
    const FullThrottlePoint& there = *found.equilibrium.full_throttle;
    return "vehicle " + std::to_string(number) + ", " + std::to_string(there.road_speed) +
           " m/s in gear " + std::to_string(there.gear + 1) + ", stop " +
           std::to_string(static_cast<int>(found.equilibrium.stop)) + ", " +
           std::to_string(there.excess_force()) + " N of " + std::to_string(there.thrust);
}

/// What the reason claims of the point it stands on.
void check_reason(const Vehicle& car, const TopSpeed& found) {
    const FullThrottlePoint& there = *found.equilibrium.full_throttle;
    const double left = there.excess_force() / there.thrust;
    const double limit = vehicle::speed_limit(car);
    switch (found.equilibrium.stop) {
        case StopReason::balance: EXPECT_NEAR(left, 0, 1e-6); break;
        case StopReason::grip:
            EXPECT_NEAR(left, 0, 1e-6);
            EXPECT_FALSE(there.grips);
            break;
        case StopReason::rev_limit:
            EXPECT_GT(left, 0);
            EXPECT_NEAR(there.point.condition.engine_speed / limit, 1, 1e-9);
            break;
        case StopReason::torque_step: EXPECT_GT(left, 1e-6); break;
        case StopReason::no_answer:
            EXPECT_GT(left, 0);
            ASSERT_TRUE(found.unanswered);
            EXPECT_GT(found.unanswered->point.condition.engine_speed,
                      there.point.condition.engine_speed);
            break;
        case StopReason::standstill: FAIL();
    }
}

/// No gear has anything left a little above, by more than the curves may be wrong.
void check_other_gears(const Vehicle& car, const TopSpeed& found) {
    VehicleSolver solver(car);
    const double above = found.equilibrium.road_speed * (1 + 2e-4);
    for (std::size_t gear = 0; gear < solver.gears(); ++gear) {
        const StopReason stop = found.equilibrium.stop;
        const bool ends = stop == StopReason::torque_step || stop == StopReason::no_answer;
        if (ends && gear == found.equilibrium.gear) continue;  // its own end is where it says
        const auto point = solved_at(solver, gear, above);
        if (!point) continue;
        EXPECT_LT(point->excess_force(), 1e-3 * point->thrust) << "gear " << gear + 1;
    }
}

int vehicles() {
    const char* asked = std::getenv("WINDWALL_TOP_SPEEDS");
    return asked ? std::atoi(asked) : 60;
}

TEST(EquilibriumSpeed, IsWhereNothingIsLeft) {
    int answered = 0, steps = 0;
    for (int i = 0; i < vehicles(); ++i) {
        Dice dice{static_cast<unsigned>(i)};
        const Vehicle car = any_vehicle(dice);
        const TopSpeed found = top_speed(car);
        if (!found.outcome.answered()) continue;
        ++answered;
        steps += found.equilibrium.stop == StopReason::torque_step;
        SCOPED_TRACE(said(i, found));
        check_reason(car, found);
        check_other_gears(car, found);
    }
    std::printf("%d vehicles: %d with a top speed, %d stopped by a step of the torque\n",
                vehicles(), answered, steps);
    EXPECT_GT(answered, vehicles() / 2);
}

}  // namespace
}  // namespace windwall::solve
