// Pulses of a valve and gulps of an engine that do not meet.
#include "windwall/charge/pulses.hpp"

#include "windwall/charge/evaporative_injection.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

using namespace windwall::charge;

namespace {

constexpr double rpm = std::numbers::pi / 30;

/// Time for which pulses from 0 on, each open for `open` of `period`, are open before `time`.
double opened_before(double time, double period, double open) {
    const double whole = std::floor(time / period);
    return whole * open + std::min(time - whole * period, open);
}

/// Strokes counted out at every phase to the pulses.
double counted(double period, double share, double engine_speed) {
    constexpr int strokes = 400000;
    const double cycle = 4 * std::numbers::pi / engine_speed, window = cycle / 3;
    double sum = 0, squares = 0;
    for (int i = 0; i < strokes; ++i) {
        // The golden section leaves no phase out.
        const double begins = std::fmod(i * std::numbers::phi, 1.0) * period;
        const double caught = opened_before(begins + window, period, share * period) -
                              opened_before(begins, period, share * period);
        sum += caught;
        squares += caught * caught;
    }
    const double mean = sum / strokes;
    return std::sqrt(std::max(squares / strokes - mean * mean, 0.0)) / mean;
}

}  // namespace

TEST(Pulses, SpreadAsCountedOut) {
    for (const double period : {0.008, 0.05, 0.2})
        for (const double share : {0.05, 0.3, 0.5, 0.8, 0.97})
            for (const double speed : {900 * rpm, 3000 * rpm, 4321 * rpm, 8000 * rpm})
                EXPECT_NEAR(cycle_spread(period, share, speed), counted(period, share, speed), 2e-4)
                    << period << ' ' << share << ' ' << speed / rpm;
}

// A real row of strokes, one cycle after the other.
TEST(Pulses, SpreadAsStrokesInARowHaveIt) {
    const double period = 0.05, share = 0.4, cycle = 4 * std::numbers::pi / (4321 * rpm);
    double sum = 0, squares = 0;
    constexpr int strokes = 200000;
    for (int i = 0; i < strokes; ++i) {
        const double caught = opened_before(i * cycle + cycle / 3, period, share * period) -
                              opened_before(i * cycle, period, share * period);
        sum += caught;
        squares += caught * caught;
    }
    const double mean = sum / strokes;
    EXPECT_NEAR(mean, share * cycle / 3, 1e-4 * mean);
    EXPECT_NEAR(cycle_spread(period, share, 4321 * rpm),
                std::sqrt(squares / strokes - mean * mean) / mean, 1e-3);
}

/// The same behind a stirred vessel: its outflow through one period, by exact steps of its lag, and
/// strokes at every phase.
double counted_stirred(double period, double share, double engine_speed, double mixing) {
    constexpr int steps = 4000;
    const double step = period / steps, kept = std::exp(-step / mixing);
    const double stroke = 4 * std::numbers::pi / engine_speed / 3;
    std::vector<double> through(steps + 1);  // what has passed since the period began
    double out = 0;
    for (int round = 0; round < 200; ++round) {
        through[0] = 0;
        for (int i = 0; i < steps; ++i) {
            const double in = i < share * steps ? 1 : 0;
            through[i + 1] = through[i] + in * step + (out - in) * mixing * (1 - kept);
            out = in + (out - in) * kept;
        }
    }
    const auto passed = [&](int i) { return i / steps * through[steps] + through[i % steps]; };
    const int strokes = static_cast<int>(std::lround(stroke / step));
    double sum = 0, squares = 0;
    for (int i = 0; i < steps; ++i) {
        const double caught = passed(i + strokes) - passed(i);
        sum += caught;
        squares += caught * caught;
    }
    const double mean = sum / steps;
    return std::sqrt(std::max(squares / steps - mean * mean, 0.0)) / mean;
}

TEST(Pulses, AreEvenedByAVesselThatStirs) {
    for (const double mixing : {0.01, 0.05, 0.3})
        for (const double share : {0.1, 0.45, 0.9})
            for (const double speed : {1500 * rpm, 4000 * rpm}) {
                const double counted = counted_stirred(0.05, share, speed, mixing);
                EXPECT_NEAR(cycle_spread(0.05, share, speed, mixing), counted, 2e-3 * counted)
                    << mixing << ' ' << share << ' ' << speed / rpm;
            }
    // Without a vessel the tones are the closed form.
    EXPECT_NEAR(cycle_spread(0.05, 0.45, 4000 * rpm, 1e-9), cycle_spread(0.05, 0.45, 4000 * rpm),
                1e-6);
}

TEST(Pulses, AreEvenWhereEachStrokeCatchesWholePeriods) {
    EXPECT_EQ(cycle_spread(0.05, 1, 3000 * rpm), 0);
    EXPECT_EQ(cycle_spread(0.05, 0, 3000 * rpm), 0);
    EXPECT_EQ(cycle_spread(0.05, 0.5, 0), 0);
    const double stroke = 4 * std::numbers::pi / (3000 * rpm) / 3;
    EXPECT_NEAR(cycle_spread(stroke / 2, 0.3, 3000 * rpm), 0, 1e-6);
    // Short bits seldom hit by short strokes: the spread of a rare event, one over the root of its
    // chance, less what both overlap by.
    EXPECT_GT(cycle_spread(1, 0.01, 8000 * rpm), 8);
    EXPECT_LT(cycle_spread(0.002, 0.3, 3000 * rpm), 0.1);
}

TEST(Pulses, BelongToTheirValve) {
    EvaporativeInjection part;
    EXPECT_EQ(part.cycle_spread(3000 * rpm, 0), 0);
    part.duty = 0.5;
    EXPECT_EQ(part.open_share(), 0.46);
    EXPECT_EQ(part.cycle_spread(3000 * rpm, 0.1), cycle_spread(0.05, 0.46, 3000 * rpm, 0.1));
}
