#include "windwall/road/tyres.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace windwall::road;

namespace {

constexpr double weight = 300 * 9.80665;

Tyres small_car() {
    Tyres tyres;
    tyres.size = "145/70 R12 69S";
    return tyres;
}

}  // namespace

TEST(Tyres, RollOnLessThanTheirHalfDiameter) {
    const Tyres tyres = small_car();
    const double diameter = 12 * 0.0254 + 2 * 0.145 * 0.7;
    EXPECT_DOUBLE_EQ(tyres.rolling_radius(), 0.969 * diameter / 2);
}

TEST(Tyres, BelieveAMeasuredRadiusMore) {
    Tyres tyres = small_car();
    tyres.measured_radius = 0.25;
    EXPECT_EQ(tyres.rolling_radius(), 0.25);
    tyres.size.clear();
    EXPECT_EQ(tyres.rolling_radius(30), 0.25);
    EXPECT_EQ(Tyres{}.rolling_radius(), 0);
}

TEST(Tyres, GrowWithSpeedWhereAsked) {
    Tyres tyres = small_car();
    tyres.measured_radius = 0.25;
    tyres.growth = 0.01;
    EXPECT_DOUBLE_EQ(tyres.rolling_radius(100 / 3.6), 0.2525);
    EXPECT_DOUBLE_EQ(tyres.rolling_radius(200 / 3.6), 0.26);
}

TEST(Tyres, KnowTheirRatingsOrSaySo) {
    Tyres tyres = small_car();
    EXPECT_DOUBLE_EQ(*tyres.speed_rating(), 50);
    EXPECT_EQ(*tyres.load_rating(), 325);
    tyres.speed_limit = 60;
    tyres.load_limit = 280;
    EXPECT_EQ(*tyres.speed_rating(), 60);
    EXPECT_EQ(*tyres.load_rating(), 280);
    tyres = Tyres{};
    tyres.size = "145/70 R12";
    EXPECT_FALSE(tyres.speed_rating());
    EXPECT_FALSE(tyres.load_rating());
}

TEST(Tyres, ComplainOfASizeNobodyUnderstands) {
    Tyres tyres = small_car();
    EXPECT_FALSE(tyres.check());
    tyres.size = "145/70 Q12x";
    ASSERT_TRUE(tyres.check());
    EXPECT_EQ(tyres.check()->key, "size");
    EXPECT_NE(tyres.check()->sentence.find("145/70 Q12x"), std::string::npos);
    tyres.size.clear();
    ASSERT_TRUE(tyres.check());
    tyres.measured_radius = 0.25;
    EXPECT_FALSE(tyres.check());
}

TEST(Slip, GrowsWithThrustAndIsHeldFarBeyondGrip) {
    EXPECT_DOUBLE_EQ(tyre_slip(400, 2000, 20), 0.01);
    EXPECT_DOUBLE_EQ(tyre_slip(-400, 2000, 20), -0.01);
    EXPECT_EQ(tyre_slip(0, 2000, 20), 0);
    EXPECT_EQ(tyre_slip(1e9, 2000, 20), 0.5);
    EXPECT_EQ(tyre_slip(400, 0, 20), 0.5);
    EXPECT_EQ(tyre_slip(0, 0, 20), 0);
    EXPECT_DOUBLE_EQ(small_car().slip(400, 2000), 0.01);
}

TEST(DrivenLoad, ShiftsToTheRear) {
    Tyres tyres = small_car();
    EXPECT_DOUBLE_EQ(tyres.driven_load(300, 0), weight / 2);
    EXPECT_DOUBLE_EQ(tyres.driven_load(300, 500), weight / 2 + 150);
    tyres.driven_axle = DrivenAxle::front;
    EXPECT_DOUBLE_EQ(tyres.driven_load(300, 500), weight / 2 - 150);
    tyres.driven_axle = DrivenAxle::all;
    EXPECT_DOUBLE_EQ(tyres.driven_load(300, 500), weight);
    EXPECT_DOUBLE_EQ(tyres.load_per_tyre(300, 500), 150);
    EXPECT_EQ(driven_load(weight, 1e6, 0.5, 0.3, DrivenAxle::rear), weight);
    EXPECT_EQ(driven_load(weight, 1e6, 0.5, 0.3, DrivenAxle::front), 0);
}

TEST(GripLimit, IsWhereThrustIsGripTimesTheLoadItMakes) {
    Tyres tyres = small_car();
    for (auto axle : {DrivenAxle::rear, DrivenAxle::front, DrivenAxle::all})
        for (double share : {0.3, 0.5, 0.6}) {
            tyres.driven_axle = axle;
            tyres.weight_on_driven_axle = share;
            const double thrust = tyres.grip_limit(300);
            EXPECT_NEAR(thrust, tyres.grip * tyres.driven_load(300, thrust), 1e-9);
        }
}

TEST(GripLimit, EndsWhereTheFrontLifts) {
    const double limit = traction_limit(weight, 1.4, 0.65, 0.5, DrivenAxle::rear);
    EXPECT_DOUBLE_EQ(limit, weight * 0.35 / 0.5);
    EXPECT_DOUBLE_EQ(driven_load(weight, limit, 0.65, 0.5, DrivenAxle::rear), weight);
    EXPECT_TRUE(std::isfinite(traction_limit(weight, 2, 0.5, 0.5, DrivenAxle::rear)));
    EXPECT_DOUBLE_EQ(traction_limit(weight, 0.9, 1, 0, DrivenAxle::rear), 0.9 * weight);
}
