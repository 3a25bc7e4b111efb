#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/account.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>
#include <string>

#include "random_vehicles.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

struct Count {
    int vehicles = 0, invalid = 0, broken = 0, lost = 0, slow = 0, cold = 0;
    double slowest = 0;
    std::map<std::string, int> ends{};
};

int asked_or(int usual) {
    const char* asked = std::getenv("WINDWALL_VEHICLES");
    return asked != nullptr ? std::atoi(asked) : usual;
}

void say(const char* what, const fields::Json& vehicle) {
    std::printf("%s: %s\n", what, vehicle.dump().c_str());
}

/// The fuel's heat that nothing else takes leaves by the exhaust; it cannot be less than none.
bool exhaust_is_cold(const vehicle::Vehicle& car, const TopSpeed& found) {
    VehicleSolver solver(car);
    const FullThrottlePoint& full_throttle = *found.equilibrium.full_throttle;
    const FullThrottlePoint again =
        solver.once({full_throttle.point.condition.engine_speed, full_throttle.gear_state()},
                    full_throttle.point.condition.road_speed);
    if (!again.point.outcome.answered()) return false;
    return heat_account(solver.point_solver().balance(), again).exhaust_temperature <
           solver.point_solver().balance().surroundings().ambient_temperature;
}

void look_at(const TopSpeed& found, const vehicle::Vehicle& car, const fields::Json& text,
             Count& count) {
    ++count.ends[std::string(name(found.outcome.status))];
    if (found.outcome.status == Status::not_converged) {
        ++(found.outcome.worst == refused_points ? count.broken : count.lost);
        say("not converged", text);
    }
    if (!found.outcome.answered()) return;
    EXPECT_TRUE(std::isfinite(found.speed())) << text;
    EXPECT_GT(found.speed(), 0) << text;
    EXPECT_TRUE(std::isfinite(found.equilibrium.full_throttle->point.torque)) << text;
    if (exhaust_is_cold(car, found)) {
        ++count.cold;
        say("cold exhaust", text);
    }
}

void solve(const fields::Json& text, Count& count) {
    const auto loaded = scenario::load(text.dump());
    const vehicle::Vehicle& car = loaded.scenario->vehicle;
    const std::clock_t before = std::clock();
    try {
        look_at(top_speed(car), car, text, count);
    } catch (const std::exception& thrown) {
        ++count.broken;
        ADD_FAILURE() << thrown.what() << ": " << text;
    }
    const double spent = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
    count.slowest = std::max(count.slowest, spent);
    if (spent > 0.5) {
        ++count.slow;
        say("slow", text);
    }
}

TEST(AnyVehicle, WhatBreaksInsideIsAnOutcome) {
    const TopSpeed found =
        top_speed(sample::cyclecar(), {}, [](const vehicle::Balance&, FullThrottlePoint&) {
            throw std::invalid_argument("the points of a spline rise strictly");
        });
    EXPECT_EQ(found.outcome.status, Status::not_converged);
    EXPECT_EQ(found.outcome.worst, refused_points);
    EXPECT_FALSE(found.equilibrium.full_throttle);
}

// Made from the rows: every kind of part in any order. WINDWALL_VEHICLES asks for more of them.
TEST(AnyVehicle, IsSolvedOrRefusedByName) {
    Count count{.vehicles = asked_or(300)};
    random_vehicles::Maker maker(20262);
    for (int i = 0; i < count.vehicles; ++i) {
        if (const auto text = maker.next()) {
            solve(*text, count);
        } else {
            ++count.invalid;
        }
    }
    std::printf("%d vehicles: %d never became valid", count.vehicles, count.invalid);
    for (const auto& [end, times] : count.ends)
        std::printf(", %d %s", times, end.c_str());
    std::printf("; %d broke off, %d with a cold exhaust, %d over 0.5 s, slowest %.2f s\n",
                count.broken, count.cold, count.slow, count.slowest);
    EXPECT_EQ(count.broken, 0);
    EXPECT_LT(count.invalid, count.vehicles / 2);
    // A few of a hundred are lost, all far from anything that runs: blowers or compressors behind
    // one another, and parts at the very ends of their ranges.
    EXPECT_LE(count.lost, 1 + count.vehicles / 25);
    EXPECT_LE(count.slow, 1 + count.vehicles / 25);
}

}  // namespace
}  // namespace windwall::solve
