#include "windwall/charge/throttle.hpp"

#include "windwall/charge/throttle_area.hpp"
#include "windwall/media/orifice.hpp"

#include <gtest/gtest.h>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::charge;

namespace {

constexpr double pi = std::numbers::pi;

Throttle throttle(double bore, double shaft = 8e-3, double leak = 0) {
    Throttle made;
    made.bore = bore;
    made.shaft = shaft;
    made.leak_area = leak;
    return made;
}

Surroundings open(double opening) {
    Surroundings surroundings;
    surroundings.throttle_opening = opening;
    return surroundings;
}

double pipe(double bore) { return pi / 4 * bore * bore; }

}  // namespace

TEST(ThrottleArea, IsNothingShutAndTheBoreLessTheShaftWideOpen) {
    EXPECT_NEAR(throttle_area(0.038, 0.008, 0.1, 0.1), 0, 1e-18);
    EXPECT_NEAR(throttle_area(0.038, 0, pi / 2, 0.1), pipe(0.038), 1e-17);
    EXPECT_LT(throttle_area(0.038, 0.008, pi / 2, 0.1), pipe(0.038) - 0.0079 * 0.0365);
}

TEST(ThrottleArea, IsContinuousWhereThePlateHidesBehindTheShaft) {
    const double closed = 6 * pi / 180;
    const double hidden = std::acos(8.0 / 38.0 * std::cos(closed));
    const double before = throttle_area(0.038, 0.008, hidden - 1e-9, closed);
    EXPECT_NEAR(before, throttle_area(0.038, 0.008, hidden + 1e-9, closed), 1e-12);
    EXPECT_EQ(throttle_area(0.038, 0.008, hidden + 0.1, closed),
              throttle_area(0.038, 0.008, pi / 2, closed));
}

TEST(ThrottleArea, CutsAnglesOutsideItsTravel) {
    EXPECT_EQ(throttle_area(0.038, 0.008, 0, 0.1), throttle_area(0.038, 0.008, 0.1, 0.1));
    EXPECT_EQ(throttle_area(0.038, 0.008, 3, 0.1), throttle_area(0.038, 0.008, pi / 2, 0.1));
    EXPECT_NEAR(throttle_area(0.01, 0.02, pi / 2, 0.1), 0, 1e-18);
}

TEST(Throttle, IsAPlainOrificeUpToHalfOpen) {
    const auto plate = throttle(0.038);
    const auto in = samples::air(100e3, 300, 0);
    for (double opening : {0.1, 0.3, 0.5}) {
        const double angle = plate.closed_angle + opening * (pi / 2 - plate.closed_angle);
        const double area = 0.8 * throttle_area(0.038, 0.008, angle, plate.closed_angle);
        EXPECT_DOUBLE_EQ(plate.flow(in, 80e3, open(opening)),
                         media::orifice_flow(area, 100e3, 300, 80e3, 287.05, in.gas.gamma(300)));
    }
}

TEST(Throttle, LeaksWhenShut) {
    const auto in = samples::air(100e3, 300, 0);
    EXPECT_DOUBLE_EQ(throttle(0.038, 8e-3, 3e-6).flow(in, 50e3, open(0)),
                     media::orifice_flow(3e-6, 100e3, 300, 50e3, 287.05, in.gas.gamma(300)));
    EXPECT_NEAR(throttle(0.038).flow(in, 50e3, open(0)), 0, 1e-15);
}

// The equivalent area A_j/(1 - A_j/A_p) of Borda and Carnot, for the small drops of full
// throttle, though not so small that the orifice is linearised (throat above 0.9995).
TEST(Throttle, LosesWideOpenWhatASuddenExpansionLoses) {
    const auto in = samples::air(100e3, 300, 0);
    const auto plate = throttle(0.038);
    const double jet = plate.jet_area(1);
    const double equal = jet / (1 - jet / pipe(0.038));
    for (double drop : {20.0, 50.0, 100.0}) {
        const double bernoulli = equal * std::sqrt(2 * in.density() * drop);
        EXPECT_NEAR(plate.flow(in, 100e3 - drop, open(1)) / bernoulli, 1, 0.01);
    }
}

TEST(Throttle, NeverGainsMoreThanNone) {
    const auto in = samples::air(100e3, 300, 0);
    for (double shaft : {0.0, 8e-3})
        for (double opening : {0.2, 0.6, 0.9, 1.0}) {
            double before = 0;
            for (double bore = 0.02; bore < 0.15; bore += 0.002) {
                auto plate = throttle(bore, shaft);
                plate.discharge_coefficient = 1;
                const double flow = plate.flow(in, 99.9e3, open(opening));
                EXPECT_GT(flow, before);  // a bigger bore passes more
                EXPECT_LT(flow, 1e3);     // and never without a drop
                before = flow;
            }
        }
}

TEST(Throttle, ChokesInItsThroatHoweverMuchItRegains) {
    const auto in = samples::air(100e3, 300, 0);
    const auto plate = throttle(0.038);
    const double choked = media::orifice_flow(plate.jet_area(1), 100e3, 300, 1, 287.05, 1.4);
    EXPECT_NEAR(plate.flow(in, 50e3, open(1)) / choked, 1, 1e-9);
    EXPECT_NEAR(plate.flow(in, 85e3, open(1)) / choked, 1, 1e-9);  // regained behind the throat
    EXPECT_LT(plate.flow(in, 95e3, open(1)) / choked, 0.95);
}

TEST(Throttle, HasNoStepsOverItsTravel) {
    const auto in = samples::air(100e3, 300, 0);
    const auto plate = throttle(0.038);
    double before = plate.flow(in, 98e3, open(0));
    for (double opening = 1e-5; opening <= 1; opening += 1e-5) {
        const double now = plate.flow(in, 98e3, open(opening));
        EXPECT_LT(now - before, 5e-6);  // a slope of 0.5 kg/s over the whole travel
        before = now;
    }
}

TEST(Throttle, RefusesAShaftAsThickAsItsBore) {
    EXPECT_TRUE(throttle(0.008, 0.008).check());
    EXPECT_FALSE(throttle(0.036, 0.008).check());
}
