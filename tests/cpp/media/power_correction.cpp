#include "windwall/media/power_correction.hpp"

#include <gtest/gtest.h>

namespace {

using namespace windwall::media;

TEST(PowerCorrection, IsOneOnEachReferenceDay) {
    EXPECT_DOUBLE_EQ(j1349_factor(99e3, 298.15), 1);
    EXPECT_DOUBLE_EQ(iso1585_factor(99e3, 298.15), 1);
    EXPECT_DOUBLE_EQ(din70020_factor(101.3e3, 293.15), 1);
}

TEST(PowerCorrection, ThinAirAndHeatRaiseEveryFactor) {
    for (const auto factor : {&j1349_factor, &iso1585_factor, &din70020_factor}) {
        EXPECT_GT(factor(90e3, 298), factor(95e3, 298));
        EXPECT_GT(factor(95e3, 310), factor(95e3, 298));
    }
}

TEST(PowerCorrection, IsoHasABand) {
    EXPECT_TRUE(iso1585_valid(0.93));
    EXPECT_TRUE(iso1585_valid(1.07));
    EXPECT_FALSE(iso1585_valid(0.9299));
    EXPECT_FALSE(iso1585_valid(1.0701));
}

}  // namespace
