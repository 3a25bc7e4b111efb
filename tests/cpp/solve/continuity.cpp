// The speed over any one input makes no jump but where a gear, the reason or a step of the torque
// explains it: the largest steps of random sweeps are halved until they are gone or named.

#include "windwall/solve/full_throttle/top_speed.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "dice.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using samples::Dice;
using vehicle::Vehicle;

constexpr int points = 24;
constexpr int most_halvings = 34;
constexpr double visible = 1e-4;  // of the speed: a hundredth of a km/h

struct Input {
    const char* name;
    double low, high;
    std::function<void(Vehicle&, double)> set;
};

engine::Cylinder& cylinder(Vehicle& car) { return *car.engine.as<engine::Cylinder>(); }
charge::PositiveBlower& blower(Vehicle& car) {
    return *car.charge_path[2].part.as<charge::PositiveBlower>();
}

const std::vector<Input>& inputs() {
    static const std::vector<Input> all{
        {"drag area", 0.25, 1.0, [](Vehicle& car, double x) { car.body.drag_area = x; }},
        {"mass", 180, 600, [](Vehicle& car, double x) { car.body.mass = x; }},
        {"temperature", 263, 315, [](Vehicle& car, double x) { car.day.temperature = x; }},
        {"grade", -0.02, 0.05, [](Vehicle& car, double x) { car.goal.grade = x; }},
        {"headwind", -8, 8, [](Vehicle& car, double x) { car.day.headwind = x; }},
        {"grip", 0.1, 1.2, [](Vehicle& car, double x) { car.tyres.grip = x; }},
        {"octane", 80, 125,
         [](Vehicle& car, double x) { cylinder(car).knock_anchor.octane_number = x; }},
        {"most retard", 0, 0.6,
         [](Vehicle& car, double x) { cylinder(car).spark.most_retard = x; }},
        {"compression ratio", 6, 11,
         [](Vehicle& car, double x) { cylinder(car).compression_ratio = x; }},
        {"lambda", 0.75, 1.1, [](Vehicle& car, double x) { cylinder(car).lambda = x; }},
        {"rev limit", 3500, 8000,
         [](Vehicle& car, double x) { cylinder(car).rev_limit = x * rpm; }},
        {"drive ratio", 0.8, 2.2, [](Vehicle& car, double x) { blower(car).drive_ratio = x; }},
        {"leak", 0, 30e-6, [](Vehicle& car, double x) { blower(car).leak_area = x; }},
        {"bore", 20e-3, 50e-3,
         [](Vehicle& car, double x) { car.charge_path[1].part.as<charge::Throttle>()->bore = x; }},
        {"final ratio", 2, 6,
         [](Vehicle& car, double x) {
             car.driveline.back().part.as<driveline::FinalDrive>()->fixed_ratio = x;
         }},
    };
    return all;
}

Vehicle any_vehicle(Dice& dice) {
    Vehicle car = dice.between(0, 1) < 0.5 ? sample::cooled_cyclecar() : sample::cyclecar();
    if (dice.between(0, 1) < 0.3)
        car.charge_path.push_back({"rear", sample::throttle(dice.between(24e-3, 40e-3))});
    if (dice.between(0, 1) < 0.25) car = sample::belt_driven(car, dice.between(2.8, 9));
    blower(car).drive_ratio = dice.between(0.9, 1.9);
    cylinder(car).knock_anchor.octane_number += dice.between(-5, 15);
    car.goal.run_up.reset();
    return car;
}

TopSpeed at(Vehicle car, const Input& input, double x) {
    input.set(car, x);
    return top_speed(car);
}

double speed(const TopSpeed& found) {
    return found.outcome.answered() ? found.equilibrium.road_speed : 0;
}

/// A change that a person is told of.
bool explained(const TopSpeed& a, const TopSpeed& b) {
    const EquilibriumSpeed &one = a.equilibrium, &other = b.equilibrium;
    const bool step = one.stop == StopReason::torque_step ||
                      other.stop == StopReason::torque_step || one.stop == StopReason::no_answer ||
                      other.stop == StopReason::no_answer;
    return a.outcome.status != b.outcome.status || one.gear != other.gear ||
           one.stop != other.stop || step;
}

struct Jump {
    double low, high;
    TopSpeed below, above;
    double size() const { return std::abs(speed(above) - speed(below)); }
};

/// Halves a step to its larger half until it is gone or its two ends are neighbours.
Jump narrowed(const Vehicle& car, const Input& input, Jump jump) {
    for (int i = 0; i < most_halvings && jump.size() > visible * speed(jump.above); ++i) {
        const double middle = 0.5 * (jump.low + jump.high);
        if (middle <= jump.low || middle >= jump.high) break;
        TopSpeed found = at(car, input, middle);
        const bool upper =
            std::abs(speed(jump.above) - speed(found)) > std::abs(speed(found) - speed(jump.below));
        if (upper) {
            jump.low = middle;
            jump.below = std::move(found);
        } else {
            jump.high = middle;
            jump.above = std::move(found);
        }
    }
    return jump;
}

Jump largest_step(const Vehicle& car, const Input& input) {
    std::vector<Jump> steps;
    TopSpeed last = at(car, input, input.low);
    double x = input.low;
    for (int i = 1; i < points; ++i) {
        const double next = input.low + (input.high - input.low) * i / (points - 1);
        TopSpeed found = at(car, input, next);
        steps.push_back({x, next, std::move(last), found});
        last = std::move(found);
        x = next;
    }
    return *std::max_element(steps.begin(), steps.end(),
                             [](const Jump& a, const Jump& b) { return a.size() < b.size(); });
}

int sweeps() {
    const char* asked = std::getenv("WINDWALL_SWEEPS");
    return asked ? std::atoi(asked) : 30;
}

TEST(Continuity, EveryJumpOfTheSpeedHasAName) {
    int jumps = 0;
    for (int i = 0; i < sweeps(); ++i) {
        Dice dice{static_cast<unsigned>(1000 + i)};
        const Vehicle car = any_vehicle(dice);
        const Input& input = inputs()[static_cast<std::size_t>(i) % inputs().size()];
        const bool belt = car.driveline.size() == 2;
        if (belt && std::string(input.name) == "rev limit") continue;
        const Jump jump = narrowed(car, input, largest_step(car, input));
        if (jump.size() <= visible * speed(jump.above)) continue;
        ++jumps;
        EXPECT_TRUE(explained(jump.below, jump.above))
            << "sweep " << i << ", " << input.name << " " << jump.low << ": "
            << speed(jump.below) * 3.6 << " to " << speed(jump.above) * 3.6 << " km/h, stop "
            << static_cast<int>(jump.below.equilibrium.stop) << " and "
            << static_cast<int>(jump.above.equilibrium.stop) << ", gear "
            << jump.below.equilibrium.gear << " and " << jump.above.equilibrium.gear;
    }
    std::printf("%d sweeps, %d with a jump\n", sweeps(), jumps);
}

}  // namespace
}  // namespace windwall::solve
