#include "windwall/road/road_load.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace windwall::road;

namespace {

Body light_car() {
    Body body;
    body.mass = 300;
    body.drag_area = 0.45;
    return body;
}

double load(const Body& body, double speed, double headwind = 0, double grade = 0) {
    return road_load(body, speed, 1.2, headwind, grade).total();
}

}  // namespace

TEST(RoadLoad, IsTheSumOfItsThreeParts) {
    const RoadLoad load = road_load(light_car(), 30, 1.2, 3, 0.02);
    EXPECT_DOUBLE_EQ(load.total(), load.air + load.rolling + load.grade);
    EXPECT_DOUBLE_EQ(load.air, 0.5 * 1.2 * 0.45 * 33 * 33);
    const double slope = std::atan(0.02);
    EXPECT_DOUBLE_EQ(load.rolling, 0.015 * 300 * 9.80665 * std::cos(slope));
    EXPECT_DOUBLE_EQ(load.grade, 300 * 9.80665 * std::sin(slope));
}

TEST(RoadLoad, GrowsWithEverythingThatHolds) {
    const double base = load(light_car(), 30);
    for (auto member : {&Body::mass, &Body::drag_area, &Body::rolling_resistance}) {
        Body body = light_car();
        body.*member *= 1.1;
        EXPECT_GT(load(body, 30), base);
    }
    Body rising = light_car();
    rising.rolling_rise = 0.1;
    EXPECT_GT(load(rising, 30), base);
    EXPECT_GT(load(light_car(), 30, 2), base);
    EXPECT_LT(load(light_car(), 30, -2), base);
    EXPECT_GT(load(light_car(), 30, 0, 0.01), base);
    EXPECT_LT(load(light_car(), 30, 0, -0.01), base);
}

TEST(RoadLoad, FeelsAFasterWindFromBehindAsAPush) {
    EXPECT_LT(road_load(light_car(), 5, 1.2, -8, 0).air, 0);
    EXPECT_DOUBLE_EQ(air_drag(0.45, 1.2, -3), -air_drag(0.45, 1.2, 3));
}

TEST(RoadLoad, HasNoJumpAtStandstill) {
    EXPECT_EQ(road_load(light_car(), 0, 1.2, 0, 0).rolling, 0);
    double before = road_load(light_car(), -3, 1.2, 0, 0).rolling;
    for (double speed = -3; speed <= 3; speed += 1e-3) {
        const double rolling = road_load(light_car(), speed, 1.2, 0, 0).rolling;
        EXPECT_NEAR(rolling, before, 0.5) << speed;
        before = rolling;
    }
    EXPECT_DOUBLE_EQ(road_load(light_car(), 2, 1.2, 0, 0).rolling, 0.015 * 300 * 9.80665);
}

TEST(RoadLoad, GivesNumbersAtAnySpeed) {
    for (double speed = 0; speed <= 150; speed += 0.5)
        for (double wind : {-40.0, 0.0, 40.0})
            EXPECT_TRUE(std::isfinite(load(light_car(), speed, wind, 0.3)));
}

TEST(StillAirResistance, IsTheSameLoadWithoutWind) {
    Body body = light_car();
    body.rolling_rise = 0.12;
    for (double grade : {-0.03, 0.0, 0.05})
        for (double speed : {3.0, 20.0, 60.0})
            EXPECT_NEAR(still_air_resistance(body, 1.1, grade).force(speed),
                        road_load(body, speed, 1.1, 0, grade).total(), 1e-11);
}

TEST(Body, RollsHarderByItsRiseAtAHundred) {
    Body body = light_car();
    body.rolling_rise = 0.2;
    EXPECT_DOUBLE_EQ(body.rolling_coefficient(0), 0.015);
    EXPECT_DOUBLE_EQ(body.rolling_coefficient(100 / 3.6), 0.018);
}

TEST(Body, CarriesItsWheelsRotation) {
    Body body = light_car();
    EXPECT_DOUBLE_EQ(body.rotating_mass(0.27), 9);
    body.wheel_inertia = 1.0;
    EXPECT_DOUBLE_EQ(body.rotating_mass(0.25), 16);
}
