#include "windwall/charge/leak.hpp"

#include "windwall/media/orifice.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace windwall::charge {
namespace {

constexpr double ambient = 100e3;  // Pa

Leak hole(double area = 20e-6) {
    Leak made;
    made.area = area;
    return made;
}

Surroundings day() {
    Surroundings made;
    made.ambient_pressure = ambient;
    made.ambient_temperature = 290;
    made.under_hood_temperature = 305;
    made.humidity_ratio = 0.008;
    return made;
}

media::Stream charge_at(double pressure) {
    media::Stream in = media::ambient_stream(pressure, 350, 0.008, 0.03);
    in.liquid = {0, 0, 0, 0.05};
    in.drop_diameter = 50e-6;
    return in;
}

TEST(Leak, LosesOutwardsUnderBoostAndDrawsInUnderVacuum) {
    EXPECT_GT(hole().lost(charge_at(130e3), day()), 0);
    EXPECT_LT(hole().lost(charge_at(70e3), day()), 0);
    EXPECT_EQ(hole().lost(charge_at(ambient), day()), 0);
    EXPECT_EQ(hole(0).lost(charge_at(130e3), day()), 0);
}

TEST(Leak, OfALossTheRestIsWhatItWas) {
    const media::Stream in = charge_at(130e3), out = hole().outlet(in, day());
    EXPECT_NEAR(in.gas_flow() - out.gas_flow(), hole().lost(in, day()), 1e-15);
    EXPECT_EQ(out.temperature, in.temperature);
    EXPECT_EQ(out.pressure, in.pressure);
    EXPECT_EQ(out.liquid, in.liquid);  // per kg of air
}

TEST(Leak, WhatIsDrawnInLeansTheMixture) {
    const media::Stream in = charge_at(70e3), out = hole().outlet(in, day());
    const double drawn = -hole().lost(in, day()) / 1.008;  // dry
    EXPECT_NEAR(out.dry_air, in.dry_air + drawn, 1e-12);
    EXPECT_NEAR(out.liquid[3] * out.dry_air, in.liquid[3] * in.dry_air, 1e-15);
    EXPECT_LT(out.temperature, in.temperature);
    const media::Stream weather = media::ambient_stream(70e3, 305, 0.008, drawn);
    EXPECT_NEAR(media::enthalpy_flow(out), media::enthalpy_flow(in) + media::enthalpy_flow(weather),
                1e-6);
}

// From pascal to pascal it changes by about what it changed by before: a jump would stand out.
TEST(Leak, GoesThroughNothingWithoutAStep) {
    const auto passes = [](double over) {
        return hole().outlet(charge_at(ambient + over), day()).dry_air;
    };
    for (double over = -200; over <= 200; over += 1) {
        const double before = passes(over) - passes(over + 1);
        const double behind = passes(over + 1) - passes(over + 2);
        EXPECT_GT(before, 0) << over;
        EXPECT_NEAR(behind / before, 1, 0.1) << over;
    }
}

TEST(Leak, NeverTakesMoreThanArrives) {
    for (const double area : {1e-4, 1e-3, 5e-3}) {
        const media::Stream out = hole(area).outlet(charge_at(250e3), day());
        EXPECT_GT(out.dry_air, 0);
        EXPECT_LT(out.dry_air, 0.03);
    }
}

}  // namespace
}  // namespace windwall::charge
