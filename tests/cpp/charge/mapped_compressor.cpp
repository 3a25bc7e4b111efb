#include "windwall/charge/mapped_compressor.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "samples.hpp"

using namespace windwall;
using charge::MappedCompressor;

namespace {

constexpr double rpm = std::numbers::pi / 30;

MappedCompressor bare() {
    MappedCompressor made;
    made.drive_ratio = 12;
    made.impeller_diameter = 0.060;
    return made;
}

/// Three made-up lines.
MappedCompressor mapped() {
    MappedCompressor made = bare();
    made.map.column = {
        {60e3 * rpm, 60e3 * rpm, 60e3 * rpm, 90e3 * rpm, 90e3 * rpm, 90e3 * rpm, 120e3 * rpm,
         120e3 * rpm, 120e3 * rpm},
        {0.020, 0.045, 0.070, 0.040, 0.075, 0.110, 0.070, 0.110, 0.150},
        {1.30, 1.26, 1.12, 1.75, 1.68, 1.35, 2.60, 2.45, 1.80},
        {0.66, 0.72, 0.55, 0.68, 0.75, 0.58, 0.66, 0.74, 0.60},
    };
    return made;
}

charge::Surroundings turning(double rotor_speed, const MappedCompressor& part) {
    charge::Surroundings surroundings;
    surroundings.drive_speed = rotor_speed / part.drive_ratio;
    return surroundings;
}

}  // namespace

TEST(MappedCompressor, ReadsItsOwnPointsBack) {
    const MappedCompressor part = mapped();
    ASSERT_FALSE(part.check());
    const auto in = samples::air(100e3, 298.15, 0.1);
    for (std::size_t i = 0; i < part.map.column[0].size(); ++i) {
        const auto at = [&](std::size_t column) { return part.map.column[column][i]; };
        const auto does = part.compress(in, 100e3 * at(2), turning(at(0), part));
        // The map's air has 287.048 J/(kg K) and this one 287.05.
        EXPECT_NEAR(does.capacity, at(1), 1e-4 * at(1)) << i;
        const double ideal = 298.15 * (std::pow(at(2), 0.4 / 1.4) - 1);
        EXPECT_NEAR(ideal / (does.outlet.temperature - 298.15), at(3), 1e-4) << i;
    }
}

// Half way between two neighbours of one line, by hand from the rows.
TEST(MappedCompressor, LiesHalfWayBetweenTheNeighboursOfALine) {
    const MappedCompressor part = mapped();
    const charge::MeasuredMap map(part.map, part.reference_temperature);
    const auto head = [](double ratio) {
        return 287.048 * 3.5 * 298.15 * (std::pow(ratio, 0.4 / 1.4) - 1);
    };
    for (const std::size_t first : {0u, 3u, 6u}) {
        const auto& column = part.map.column;
        for (const std::size_t step : {0u, 1u}) {
            const std::size_t i = first + step;
            const auto at = map.at(column[0][i], 0.25 + 0.5 * static_cast<double>(step));
            EXPECT_NEAR(at.flow, (column[1][i] + column[1][i + 1]) / 2, 1e-12) << i;
            EXPECT_NEAR(at.head, (head(column[2][i]) + head(column[2][i + 1])) / 2, 1e-6) << i;
        }
    }
}

// One wrong neighbour anywhere in a line is enough, on either side.
TEST(MappedCompressor, RefusesALineThatTurnsBack) {
    const auto refused = [](std::size_t column, std::size_t row, double value) {
        MappedCompressor part = mapped();
        part.map.column[column][row] = value;
        return part.check().has_value();
    };
    for (std::size_t row = 0; row < 9; ++row) {
        EXPECT_EQ(refused(1, row, 0.001), row % 3 > 0) << row;  // less than the one before
        EXPECT_EQ(refused(1, row, 0.9), row % 3 < 2) << row;    // more than the one behind
        EXPECT_EQ(refused(2, row, 5), row % 3 > 0) << row;
        EXPECT_EQ(refused(2, row, 1.02), row % 3 < 2) << row;
    }
    EXPECT_FALSE(refused(1, 1, 0.020));       // a flow may stay
    EXPECT_TRUE(refused(2, 1, 1.30));         // a pressure ratio may not
    EXPECT_TRUE(refused(0, 8, 100e3 * rpm));  // slower than the line before it
    EXPECT_TRUE(refused(0, 8, 150e3 * rpm));  // a line of one point
    MappedCompressor backwards = mapped();
    for (auto& column : backwards.map.column)
        std::rotate(column.begin(), column.begin() + 3, column.end());
    EXPECT_TRUE(backwards.check());  // the slowest line last
}

TEST(MappedCompressor, IsTheSameMachineAtAnotherInlet) {
    // Same Mach numbers: flow with pressure over the root of temperature, rise with temperature.
    const MappedCompressor part = mapped();
    const double theta = 1.2, delta = 0.8, speed = 100e3 * rpm;
    const auto plain =
        part.compress(samples::air(100e3, 298.15, 0.05), 160e3, turning(speed, part));
    const auto other = part.compress(samples::air(delta * 100e3, theta * 298.15, 0.05),
                                     delta * 160e3, turning(speed * std::sqrt(theta), part));
    EXPECT_NEAR(other.capacity, plain.capacity * delta / std::sqrt(theta), 1e-9);
    EXPECT_NEAR(other.outlet.temperature, theta * plain.outlet.temperature, 1e-6);
}

TEST(MappedCompressor, LiesBetweenItsLinesAndGoesOnByTheFanLaws) {
    const MappedCompressor part = mapped();
    const charge::MeasuredMap map(part.map, part.reference_temperature);
    for (const double beta : {0.0, 0.3, 1.0}) {
        const auto slow = map.at(90e3 * rpm, beta), fast = map.at(120e3 * rpm, beta);
        const auto middle = map.at(105e3 * rpm, beta);
        EXPECT_NEAR(middle.flow / 105, (slow.flow / 90 + fast.flow / 120) / 2, 1e-12);
        EXPECT_NEAR(middle.head / 105 / 105, (slow.head / 8100 + fast.head / 14400) / 2, 1e-9);
        const auto beyond = map.at(150e3 * rpm, beta);
        EXPECT_NEAR(beyond.flow, fast.flow * 1.25, 1e-12);
        EXPECT_NEAR(beyond.work, fast.work * 1.5625, 1e-7);
        EXPECT_NEAR(map.at(30e3 * rpm, beta).head, map.at(60e3 * rpm, beta).head / 4, 1e-7);
    }
}

TEST(MappedCompressor, PassesLessTheMoreIsAskedOfItAndSaysWhereItSurgesAndChokes) {
    for (const MappedCompressor& part : {bare(), mapped()}) {
        const auto in = samples::air(100e3, 298.15, 0.05);
        const auto surroundings = turning(90e3 * rpm, part);
        double before = 1e9;
        int surging = 0, choked = 0;
        for (double ratio = 0.2; ratio < 6; ratio *= 1.001) {
            const auto does = part.compress(in, ratio * in.pressure, surroundings);
            EXPECT_LT(does.capacity, before) << ratio;
            EXPECT_NEAR(does.capacity, before, before < 1e8 ? 0.008 : 1e9) << ratio;
            before = does.capacity;
            EXPECT_FALSE(does.surging && does.choked);
            surging += does.surging;
            choked += does.choked;
        }
        EXPECT_GT(surging, 500);
        EXPECT_GT(choked, 500);
        EXPECT_LT(before, 0);
    }
}

TEST(MappedCompressor, BoostsWithTheSquareOfSpeed) {
    // Fan laws: twice the speed, four times the head at twice the flow.
    const MappedCompressor part = bare();
    const auto in = samples::air(100e3, 298.15, 0.05);
    const auto head = [&](double speed, double flow) {
        double low = 1, high = 6;
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            const auto does = part.compress(in, middle * 100e3, turning(speed, part));
            (does.capacity > flow ? low : high) = middle;
        }
        return charge::isentropic_head(low, 298.15, 1004.675, 1.4);
    };
    EXPECT_NEAR(head(90e3 * rpm, 0.09) / head(45e3 * rpm, 0.045), 4, 1e-6);
}

TEST(MappedCompressor, RefusesLinesThatRise) {
    MappedCompressor part = mapped();
    part.map.column[2][1] = 1.31;
    ASSERT_TRUE(part.check());
    EXPECT_EQ(part.check()->key, "map");
    part = mapped();
    std::swap(part.map.column[0][0], part.map.column[0][8]);
    EXPECT_TRUE(part.check());
    part = mapped();
    part.map.column[0][8] = 130e3 * rpm;
    EXPECT_TRUE(part.check());
}
