#include "windwall/driveline/sheaves.hpp"

#include <gtest/gtest.h>

namespace windwall::driveline {
namespace {

// Two half turns and two straights; a handbook's series for wheels of two sizes.
TEST(BeltLength, IsThatOfHandbooks) {
    EXPECT_DOUBLE_EQ(belt_length(0.05, 0.05, 0.3), 2 * 0.3 + std::numbers::pi * 0.1);
    const double D = 0.16, d = 0.10, C = 0.4;
    const double series = 2 * C + std::numbers::pi / 2 * (D + d) + (D - d) * (D - d) / (4 * C);
    EXPECT_NEAR(belt_length(d / 2, D / 2, C), series, 1e-5);
}

TEST(BeltLength, LeavesOneRadiusToTheOther) {
    for (const double driving : {0.03, 0.06, 0.09}) {
        const double length = belt_length(driving, 0.07, 0.25);
        EXPECT_NEAR(driven_radius(driving, 0.25, length), 0.07, 1e-9);
        EXPECT_NEAR(driving_radius(0.07 / driving, 0.25, length), driving, 1e-9);
    }
}

}  // namespace
}  // namespace windwall::driveline
