// Which unknowns an air path declares, and what goes round through a bypass.
#include "windwall/vehicle/balance/air_path.hpp"

#include "windwall/media/stream_enthalpy.hpp"

#include <gtest/gtest.h>

#include <set>

#include "solve/samples.hpp"

namespace windwall::vehicle {
namespace {

charge::EvaporativeInjection nozzle() {
    charge::EvaporativeInjection made;
    made.rated_flow = 2e-6;
    return made;
}

TEST(AirPath, DeclaresOnceForEachOwner) {
    Vehicle car = sample::cooled_cyclecar();
    car.charge_path.push_back({"bypass", charge::Bypass{}});
    const AirPath air(car.charge_path);
    ASSERT_EQ(air.unknowns.size(), 5u);  // flow, throttle, blower, and two of the bypass
    EXPECT_EQ(air.unknowns[air.flow].owner, "engine");
    EXPECT_EQ(air.behind[0], AirPath::none);
    EXPECT_EQ(air.unknowns[air.behind[1]].owner, "throttle");
    EXPECT_EQ(air.unknowns[air.behind[2]].owner, "blower");
    EXPECT_EQ(air.unknowns[air.loops.at(0).flow].owner, "bypass");
    EXPECT_EQ(air.unknowns[air.loops.at(0).heat].owner, "bypass");
}

// A loop is wet where a nozzle stands between its blower and its bypass, and only there.
TEST(AirPath, FindsWetLoops) {
    const auto wet = [](std::size_t before) {
        Vehicle car = sample::cyclecar();  // filter, throttle, blower, plenum
        car.charge_path.push_back({"bypass", charge::Bypass{}});
        car.charge_path.insert(car.charge_path.begin() + static_cast<std::ptrdiff_t>(before),
                               {"nozzle", nozzle()});
        const AirPath air(car.charge_path);
        EXPECT_EQ(air.unknowns.size(), air.loops.at(0).wet ? 10u : 5u);
        return air.loops.at(0).wet;
    };
    EXPECT_FALSE(wet(0));
    EXPECT_FALSE(wet(2));
    EXPECT_TRUE(wet(3));  // behind the blower
    EXPECT_TRUE(wet(4));  // behind the plenum, just before the bypass
    EXPECT_FALSE(wet(5));
}

// The unknown of a ratio and back, and steeper beyond what can run forward.
TEST(Recirculation, ItsUnknownIsTheInverse) {
    for (double ratio : {-0.9, -0.4, -1e-3, 0.0, 1e-4, 0.3, 2.0, 40.0})
        EXPECT_NEAR(recirculation(recirculation_unknown(ratio)), ratio,
                    1e-12 * (1 + std::abs(ratio)));
    // Beyond 95 % of the flow the unknown goes on with the slope it has there: no kink, and never
    // flatter than before.
    const auto slope = [](double ratio) {
        constexpr double step = 1e-6;
        const auto over = [](double r) { return std::sinh(-recirculation_unknown(r)); };
        return (std::sqrt(over(ratio - step)) - std::sqrt(over(ratio))) / step;
    };
    EXPECT_NEAR(slope(-0.9501) / slope(-0.9499), 1, 0.01);
    EXPECT_NEAR(slope(-0.99) / slope(-0.9501), 1, 0.01);
}

}  // namespace
}  // namespace windwall::vehicle
