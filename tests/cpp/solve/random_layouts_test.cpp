#include "windwall/solve/point.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <random>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;

class Layouts {
public:
    vehicle::Vehicle next() {
        vehicle::Vehicle car = sample::cyclecar();
        car.day.temperature = between(253.15, 323.15);
        car.day.pressure = between(70e3, 105e3);
        auto& engine = *car.engine.as<engine::Cylinder>();
        const double scale = std::cbrt(between(200, 1000) / 624);
        engine.bore *= scale;
        engine.stroke *= scale;
        car.charge_path.clear();
        if (chance()) car.charge_path.push_back({"filter", sample::filter()});
        car.charge_path.push_back({"throttle", sample::throttle(between(18e-3, 60e-3))});
        if (chance()) car.charge_path.push_back({"blower", blower()});
        if (chance()) car.charge_path.push_back({"cooler", sample::cooler()});
        if (chance()) car.charge_path.push_back({"plenum", charge::Plenum{}});
        return car;
    }
    vehicle::Condition condition() {
        return {between(700, 6200) * rpm, between(0, 40), std::pow(10, between(-1.7, 0))};
    }

private:
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    bool chance() { return between(0, 1) < 0.7; }
    charge::PositiveBlower blower() {
        charge::PositiveBlower made = sample::roots();
        made.displacement = between(80e-6, 500e-6);
        made.drive_ratio = between(0.7, 2.5);
        made.leak_area = between(2e-6, 25e-6);
        if (chance()) made.built_in_ratio = between(1, 1.5);
        return made;
    }
    std::mt19937 random_{20261};
};

// Every layout is solved or answered by name, and no number of an answer is not a number.
// WINDWALL_LAYOUTS asks for more than the usual number.
TEST(RandomLayouts, EveryOneIsSolvedOrAnsweredByName) {
    const char* asked = std::getenv("WINDWALL_LAYOUTS");
    const int layouts = asked != nullptr ? std::atoi(asked) : 2000;
    Layouts make;
    int solved = 0, most = 0, unanswered = 0;
    for (int i = 0; i < layouts; ++i) {
        const vehicle::Vehicle car = make.next();
        PointSolver solver(car);
        const Point point = solver.at(make.condition());
        most = std::max(most, static_cast<int>(solver.evaluations()));
        ASSERT_NE(point.verdict.status, Status::not_converged) << "layout " << i;
        if (!point.verdict.answered()) {
            ++unanswered;
            EXPECT_EQ(point.verdict.status, Status::no_survivable_state);
            continue;
        }
        ++solved;
        ASSERT_TRUE(std::isfinite(point.torque)) << "layout " << i;
        ASSERT_TRUE(std::isfinite(solver.balance().manifold().temperature));
        ASSERT_GT(solver.balance().manifold().pressure, 0);
    }
    std::printf("%d layouts: %d solved, %d with no survivable state, worst %d evaluations\n",
                layouts, solved, unanswered, most);
    EXPECT_GT(solved, layouts * 9 / 10);
}

}  // namespace
}  // namespace windwall::solve
