#include "windwall/solve/full_throttle/top_speed.hpp"

#include <gtest/gtest.h>

#include <string>

#include "scenario/files.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

// Run out, the second gear would go at 20 km/s, and the air would ram the engine to pieces.
TEST(AbsurdGears, AGearTooTallToBeDrivenOutSpoilsNothing) {
    vehicle::Vehicle car = sample::cyclecar();
    car.engine_bay.ram_recovery = 0.5;
    auto& ratios = car.driveline[1].part.as<driveline::Gearbox>()->ratios;
    ratios = {2.0};
    const TopSpeed alone = top_speed(car);
    ratios = {2.0, 0.002};
    const TopSpeed with_it = top_speed(car);
    ASSERT_TRUE(with_it.outcome.answered());
    EXPECT_EQ(with_it.equilibrium.gear, 0u);
    EXPECT_NEAR(with_it.speed() / alone.speed(), 1, 1e-4);
}

std::string problems_with_gearboxes(int boxes) {
    fields::Json train = fields::Json::array();
    for (int i = 0; i < boxes; ++i)
        train.push_back({{"id", "box_" + std::to_string(i)},
                         {"kind", "gearbox"},
                         {"ratios", {3, 2, 1.5, 1.2, 1, 0.8}}});
    auto car = scenario::car("[]");
    car["driveline"] = train;
    car.erase("observed");
    return scenario::problems_of(car.dump());
}

// Each gear is a curve: five boxes of six gears would make 7776 of them, and take seconds.
TEST(AbsurdGears, TooManyTogetherAreRefusedByName) {
    EXPECT_EQ(problems_with_gearboxes(2), "");
    EXPECT_NE(problems_with_gearboxes(5).find("driveline: its gearboxes have 7776 gears together, "
                                              "where 128 are the most"),
              std::string::npos)
        << problems_with_gearboxes(5);
}

}  // namespace
}  // namespace windwall::solve
