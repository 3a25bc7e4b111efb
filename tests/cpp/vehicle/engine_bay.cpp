// The air under the bodywork: the faster or the more open, the cooler, and the more it carries
// away.
#include "windwall/vehicle/engine_bay.hpp"

#include <gtest/gtest.h>

namespace windwall::vehicle {
namespace {

TEST(EngineBay, IsCoolerWithTheWindAndWithTheHoodUp) {
    EngineBay bay;
    const double closed = bay.rise_at(0);
    EXPECT_EQ(closed, bay.rise);
    EXPECT_NEAR(bay.rise_at(bay.halving_speed), closed / 2, 1e-12);
    bay.hood = Hood::open;
    EXPECT_NEAR(bay.rise_at(0), 0.35 * closed, 1e-12);
    // Twice as wide an opening of a warm room lets so much out that (H/A)^(2/3) is left: 5 times
    // the area for a third of the rise.
    EXPECT_NEAR(bay.rise_at(0) / closed, std::pow(5, -2.0 / 3), 0.02);
}

TEST(EngineBay, ComesToTheRiseThatItsHoodLeaves) {
    charge::Surroundings around;
    around.ambient_temperature = 300;
    around.air_density = 1.2;
    around.road_speed = 20;
    for (const Hood hood : {Hood::closed, Hood::open}) {
        EngineBay bay;
        bay.hood = hood;
        const auto [air] = bay.thermal_nodes(around);
        EXPECT_NEAR(air.heat_flow(300 + bay.rise_at(20)), 0, 1e-9);
    }
}

TEST(EngineBay, BlowsHarderOnWarmWallsTheFasterItGoes) {
    const EngineBay bay;
    EXPECT_NEAR(bay.film_at(0), charge::Surroundings{}.outside_film, 0.1);
    EXPECT_EQ(bay.film_at(20), charge::outside_film(bay.stir * bay.draught(20)));
    EXPECT_GT(bay.film_at(20), bay.film_at(0) + 2);
}

}  // namespace
}  // namespace windwall::vehicle
