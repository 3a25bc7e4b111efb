#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/account.hpp"

#include <gtest/gtest.h>

#include <algorithm>
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
    std::map<std::string, int> ends{}, engines{};
};

int asked_or(int usual) {
    const char* asked = std::getenv("WINDWALL_VEHICLES");
    return asked != nullptr ? std::atoi(asked) : usual;
}

void say(const std::string& what, const fields::Json& vehicle) {
    std::printf("%s: %s\n", what.c_str(), vehicle.dump().c_str());
}

/// What the exhaust gas keeps of the fuel's heat cannot leave it colder than the day.
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

bool is_cautioned(const vehicle::Vehicle& car) {
    const auto cautions = answer_speed(car).cautions;
    return std::ranges::any_of(
        cautions, [](const Caution& one) { return one.about == CautionKind::exhaust_heat; });
}

void look_at(const TopSpeed& found, const vehicle::Vehicle& car, const fields::Json& text,
             Count& count) {
    ++count.ends[std::string(name(found.outcome.status))];
    if (found.outcome.status == Status::broken_off) {
        ++count.broken;
        say("broke off", text);
    }
    if (found.outcome.status == Status::not_converged) {
        ++count.lost;
        say("not converged", text);
    }
    if (!found.outcome.answered()) return;
    EXPECT_TRUE(std::isfinite(found.speed())) << text;
    EXPECT_GT(found.speed(), 0) << text;
    EXPECT_TRUE(std::isfinite(found.equilibrium.full_throttle->point.torque)) << text;
    if (exhaust_is_cold(car, found)) {
        ++count.cold;
        EXPECT_TRUE(is_cautioned(car)) << text;
    }
}

void solve(const fields::Json& text, Count& count) {
    const auto loaded = scenario::load(text.dump());
    const vehicle::Vehicle& car = loaded.scenario->vehicle;
    const std::clock_t before = std::clock();
    const TopSpeed found = top_speed(car);
    const double spent = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
    look_at(found, car, text, count);
    count.slowest = std::max(count.slowest, spent);
    if (spent > 0.5) {
        ++count.slow;
        say("slow, " + std::to_string(spent) + " s, " + std::to_string(found.points) + " points, " +
                std::to_string(found.evaluations) + " evaluations, " +
                std::string(name(found.outcome.status)),
            text);
    }
}

// Made from the rows: every kind of part in any order. WINDWALL_VEHICLES asks for more of them.
TEST(AnyVehicle, IsSolvedOrRefusedByName) {
    Count count{.vehicles = asked_or(300)};
    random_vehicles::Maker maker(20262);
    for (int i = 0; i < count.vehicles; ++i) {
        if (const auto text = maker.next()) {
            ++count.engines[(*text)["engine"]["kind"].get<std::string>()];
            solve(*text, count);
        } else {
            ++count.invalid;
        }
    }
    std::printf("%d vehicles: %d never became valid", count.vehicles, count.invalid);
    for (const auto& [kind, times] : count.engines)
        std::printf(", %d %s", times, kind.c_str());
    for (const auto& [end, times] : count.ends)
        std::printf(", %d %s", times, end.c_str());
    std::printf("; %d broke off, %d with a cold exhaust, %d over 0.5 s, slowest %.2f s\n",
                count.broken, count.cold, count.slow, count.slowest);
    EXPECT_EQ(count.broken, 0);
    // Every kind is made, or what is found below is found of one kind only.
    for (const std::string_view kind : {"cylinder", "torque_curve"})
        EXPECT_GT(count.engines[std::string(kind)], count.vehicles / 10) << kind;
    EXPECT_LT(count.invalid, count.vehicles / 2);
    // Where a pump's switch reads what it changes, or a hole of tens of square centimetres lies
    // between throttle and compressor, a balance may be lost: two of these three hundred.
    EXPECT_LE(count.lost, 2 + count.vehicles / 200);
    EXPECT_EQ(count.slow, 0);
    // Of twenty thousand six in a thousand, each with a measured torque that its displacement has
    // no fuel for.
    EXPECT_LE(count.cold, 2 + count.vehicles / 100);
}

}  // namespace
}  // namespace windwall::solve
