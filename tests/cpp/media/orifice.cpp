#include "windwall/media/orifice.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace {

using namespace windwall::media;

double printed(double ratio, double g) {
    return std::sqrt(2 * g / (g - 1) * (std::pow(ratio, 2 / g) - std::pow(ratio, (g + 1) / g)));
}

TEST(FlowFunction, IsThePrintedFormulaUpToTheLastExactRatio) {
    for (const double g : {1.1, 1.3, 1.4, 5.0 / 3})
        for (double ratio = critical_ratio(g); ratio <= 0.9995; ratio += 0.00371)
            EXPECT_NEAR(flow_function(ratio, g) / printed(ratio, g), 1, 1e-10);
    EXPECT_NEAR(flow_function(0.9995, 1.4) / printed(0.9995, 1.4), 1, 1e-10);
    EXPECT_NEAR(flow_function(0.9994, 1.4) / printed(0.9994, 1.4), 1, 1e-10);
}

TEST(FlowFunction, IsConstantBelowTheCriticalRatioAndJoinsThere) {
    for (const double g : {1.1, 1.3, 1.4, 5.0 / 3}) {
        const double most = std::sqrt(g) * std::pow(2 / (g + 1), (g + 1) / (2 * (g - 1)));
        const double critical = critical_ratio(g);
        EXPECT_NEAR(flow_function(critical, g), most, 1e-12);
        EXPECT_NEAR(flow_function(critical + 1e-9, g), most, 1e-12);
        EXPECT_NEAR(flow_function(0.5 * critical, g), most, 1e-12);
        EXPECT_NEAR(flow_function(0, g), most, 1e-12);
        EXPECT_NEAR(flow_function(-1, g), most, 1e-12);
    }
}

TEST(FlowFunction, FallsStrictlyFromTheCriticalRatioToZero) {
    double before = flow_function(0.53, 1.4);
    for (int i = 1; i <= 47000; ++i) {
        const double psi = flow_function(0.53 + i * 1e-5, 1.4);
        EXPECT_LT(psi, before);
        before = psi;
    }
    EXPECT_EQ(flow_function(1, 1.4), 0);
    EXPECT_EQ(flow_function(1.2, 1.4), 0);
}

double slope(double ratio, double step) {
    return (flow_function(ratio + step, 1.4) - flow_function(ratio - step, 1.4)) / (2 * step);
}

TEST(FlowFunction, HasOneSlopeWhereTheCubicBegins) {
    const double from_below = slope(0.9995 - 2e-7, 1e-7), from_above = slope(0.9995 + 2e-7, 1e-7);
    EXPECT_NEAR(from_above / from_below, 1, 2e-3);
    EXPECT_NEAR(from_below, -31.6, 0.3);  // Psi/(2 x) of the square root near x = 0.0005
}

TEST(FlowFunction, SlopeStaysFiniteUpToOne) {
    double steepest = 0;
    for (double ratio = 0.9990; ratio < 0.999998; ratio += 1e-6)
        steepest = std::max(steepest, std::abs(slope(ratio, 1e-7)));
    EXPECT_LT(steepest, 80);
    EXPECT_GT(steepest, 70);
}

TEST(FlowFunction, IsTotal) {
    for (const double g : {0.5, 1.0, 1.0000001, 3.0})
        for (const double ratio : {-1.0, 0.0, 0.3, 0.7, 0.9999, 1.0, 2.0})
            EXPECT_TRUE(std::isfinite(flow_function(ratio, g))) << g << ' ' << ratio;
    // Isothermal limit of the formula: sqrt(-2 ln r) r.
    EXPECT_NEAR(flow_function(0.8, 1.0), 0.8 * std::sqrt(-2 * std::log(0.8)), 1e-5);
}

TEST(OrificeFlow, ReverseFlowIsSymmetric) {
    for (const double low : {20e3, 80e3, 99e3, 99.99e3}) {
        const double forward = orifice_flow(1e-4, 100e3, 300, low, 287, 1.4);
        EXPECT_GT(forward, 0);
        EXPECT_DOUBLE_EQ(orifice_flow(1e-4, low, 300, 100e3, 287, 1.4), -forward);
    }
    EXPECT_EQ(orifice_flow(1e-4, 100e3, 300, 100e3, 287, 1.4), 0);
}

TEST(OrificeFlow, PassesThroughZeroWithoutACorner) {
    const auto flow = [](double difference) {
        return orifice_flow(1e-4, 100e3 + difference, 300, 100e3, 287, 1.4);
    };
    const double forward = flow(1e-3) / 1e-3, backward = flow(-1e-3) / -1e-3;
    EXPECT_NEAR(forward / backward, 1, 1e-6);
    EXPECT_TRUE(std::isfinite(forward));
    EXPECT_GT(forward, 0);
}

TEST(OrificeFlow, GrowsWithAreaAndPressureAndFallsWithHeat) {
    const double base = orifice_flow(1e-4, 100e3, 300, 40e3, 287, 1.4);
    EXPECT_NEAR(orifice_flow(2e-4, 100e3, 300, 40e3, 287, 1.4), 2 * base, 1e-15);
    EXPECT_NEAR(orifice_flow(1e-4, 150e3, 300, 40e3, 287, 1.4), 1.5 * base, 1e-15);
    EXPECT_NEAR(orifice_flow(1e-4, 100e3, 1200, 40e3, 287, 1.4), base / 2, 1e-15);
}

TEST(OrificeFlow, IsTotal) {
    EXPECT_EQ(orifice_flow(1e-4, 0, 300, 0, 287, 1.4), 0);
    EXPECT_EQ(orifice_flow(1e-4, -5, 300, -5, 287, 1.4), 0);
    EXPECT_GT(orifice_flow(1e-4, 100e3, 300, 0, 287, 1.4), 0);
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(std::isnan(orifice_flow(1e-4, nothing, 300, 1e5, 287, 1.4)));
    EXPECT_TRUE(std::isnan(orifice_flow(1e-4, 1e5, 300, nothing, 287, 1.4)));
}

}  // namespace
