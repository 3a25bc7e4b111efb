#include "windwall/driveline/train.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

constexpr double growth = 0.1;  // at 100 km/h, the most there may be

Vehicle geared(double ratio) {
    Vehicle car = sample::cyclecar();
    car.tyres.growth = growth;
    car.driveline[1].part.as<driveline::Gearbox>()->ratios = {ratio};
    return car;
}

/// The definition: a radius that belongs to the speed it gives.
double off_by(const Vehicle& car, const FullThrottlePoint& full_throttle) {
    const double wheels = full_throttle.point.condition.engine_speed /
                          driveline::total_ratio(car.driveline, full_throttle.gear_state());
    const double speed =
        wheels * car.tyres.rolling_radius(full_throttle.road_speed) * (1 - full_throttle.slip);
    return full_throttle.road_speed / speed - 1;
}

TEST(TyreGrowth, RadiusAndSpeedAgreeHoweverFastTheWheelsTurn) {
    int shaped = 0, outgrown = 0;
    for (double ratio = 5; ratio > 0.4; ratio *= 0.97) {
        const Vehicle car = geared(ratio);
        const FullThrottlePoint full_throttle = VehicleSolver(car).at({4500 * rpm, {0, 1}});
        if (full_throttle.point.outcome.answered()) {
            EXPECT_NEAR(off_by(car, full_throttle), 0, 1e-9) << ratio;
            EXPECT_EQ(outgrown, 0) << "the slower one has no answer";
            ++shaped;
        } else {
            EXPECT_EQ(full_throttle.point.outcome.status, Status::out_of_range);
            EXPECT_EQ(full_throttle.point.outcome.worst, outgrown_tyres);
            ++outgrown;
        }
    }
    EXPECT_GT(shaped, 10);
    EXPECT_GT(outgrown, 10);
}

TEST(TyreGrowth, ATopSpeedIsFoundOrRefusedByName) {
    for (double ratio = 5; ratio > 0.4; ratio *= 0.9) {
        const TopSpeed found = top_speed(geared(ratio));
        if (found.outcome.answered()) {
            EXPECT_TRUE(std::isfinite(found.speed())) << ratio;
        } else {
            EXPECT_TRUE(found.outcome.status == Status::no_balance ||
                        found.outcome.worst == outgrown_tyres)
                << ratio;
        }
    }
}

}  // namespace
}  // namespace windwall::solve
