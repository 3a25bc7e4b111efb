#include "windwall/engine/breathing.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace windwall::engine {
namespace {

constexpr double ratio = 9, gamma = 1.3;

double filling(double pressure_ratio) {
    return ideal_volumetric_efficiency(ratio, pressure_ratio, gamma);
}

// Heywood 1988, equation 6.2, solved for where it gives this filling.
double pressure_ratio_of(double filling) {
    return gamma * (ratio - filling * (ratio - 1)) + 1 - gamma;
}

TEST(IdealVolumetricEfficiency, IsOneWhereBothPressuresAreOne) {
    EXPECT_DOUBLE_EQ(filling(1), 1);
    EXPECT_NEAR(filling(pressure_ratio_of(0.7)), 0.7, 1e-14);
}

// Beyond its range the straight line would run below nothing.
TEST(IdealVolumetricEfficiency, GoesOnWithoutAStepOrAKinkAndNeverBelowNothing) {
    const double knee = pressure_ratio_of(0.3), step = 1e-5;
    const double before = filling(knee) - filling(knee - step);
    const double after = filling(knee + step) - filling(knee);
    EXPECT_NEAR(filling(knee), 0.3, 1e-12);
    EXPECT_NEAR(after / before, 1, 1e-4);
    EXPECT_LT(before, 0);
    for (double away = 0; away < 40; away += 1) {
        EXPECT_GT(filling(knee + away + 1), 0);
        EXPECT_LT(filling(knee + away + 1), filling(knee + away));
    }
}

}  // namespace
}  // namespace windwall::engine
