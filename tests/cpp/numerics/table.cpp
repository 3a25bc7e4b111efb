#include "windwall/numerics/table.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>
#include <string>

namespace {

using namespace windwall::numerics;
constexpr auto monotone = Interpolation::monotone;

const std::vector<double> uneven{0, 1, 1.5, 4, 7};

TEST(Table, ReadsItsOwnPointsBothWays) {
    const std::vector<double> values{2, -1, 5, 5, 0.25};
    for (const auto how : {Interpolation::linear, monotone}) {
        const Table table(uneven, values, how);
        for (std::size_t i = 0; i < uneven.size(); ++i) {
            EXPECT_DOUBLE_EQ(table.at(uneven[i]).value, values[i]);
            EXPECT_TRUE(table.at(uneven[i]).in_range);
        }
    }
}

TEST(Table, IsExactForStraightLines) {
    std::vector<double> values;
    for (const double x : uneven)
        values.push_back(3 - 2 * x);
    for (const auto how : {Interpolation::linear, monotone}) {
        const Table table(uneven, values, how);
        for (double x = 0; x <= 7; x += 0.37)
            EXPECT_NEAR(table.at(x).value, 3 - 2 * x, 1e-14);
    }
}

TEST(Table, ClampsAndSaysSo) {
    for (const auto how : {Interpolation::linear, monotone}) {
        const Table table({1, 2, 4}, {10, 30, 20}, how);
        EXPECT_EQ(table.at(-5).value, 10);
        EXPECT_FALSE(table.at(-5).in_range);
        EXPECT_EQ(table.at(4.0001).value, 20);
        EXPECT_FALSE(table.at(4.0001).in_range);
        EXPECT_TRUE(table.at(1).in_range);
        EXPECT_TRUE(table.at(4).in_range);
        EXPECT_FALSE(table.at(std::numeric_limits<double>::quiet_NaN()).in_range);
    }
}

TEST(Table, MonotoneNeverOvershootsWhatItJoins) {
    const std::vector<double> x{0, 1, 2, 3, 4, 5, 6}, y{0, 0.1, 5, 5.1, 5.1, 2, 8};
    const Table table(x, y, monotone);
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
        double before = y[i];
        for (double t = 0; t <= 1; t += 1.0 / 64) {
            const double value = table.at(x[i] + t * (x[i + 1] - x[i])).value;
            EXPECT_GE(value, std::min(y[i], y[i + 1]) - 1e-14);
            EXPECT_LE(value, std::max(y[i], y[i + 1]) + 1e-14);
            EXPECT_GE((value - before) * (y[i + 1] - y[i]), -1e-13);
            before = value;
        }
    }
}

TEST(Table, MonotoneHasASlopeWithoutJumps) {
    const Table table({0, 1, 1.5, 4, 7}, {0, 1, 3, 4, 4.5}, monotone);
    for (const double knot : {1.0, 1.5, 4.0}) {
        const double h = 1e-6;
        const double before = (table.at(knot).value - table.at(knot - h).value) / h;
        const double after = (table.at(knot + h).value - table.at(knot).value) / h;
        EXPECT_NEAR(before, after, 1e-4);
    }
}

TEST(Table, MonotoneErrorFallsWithTheSquareOfTheSpacingOrFaster) {
    const auto error = [](int n) {
        std::vector<double> x, y;
        for (int i = 0; i <= n; ++i)
            x.push_back(1.0 * i / n), y.push_back(std::exp(x.back()));
        const Table table(x, y, monotone);
        double worst = 0;
        for (double t = 0; t <= 1; t += 0.0013)
            worst = std::max(worst, std::abs(table.at(t).value - std::exp(t)));
        return worst;
    };
    EXPECT_GT(error(10) / error(20), 4.0);
    EXPECT_LT(error(20), 1e-4);
}

// Values of scipy.interpolate.PchipInterpolator, scipy 1.17.
TEST(Table, MonotoneAgreesWithAnIndependentLibrary) {
    const std::vector<double> at{0.3, 0.7, 1.2, 2.5, 3.9, 5, 6.9};
    const std::vector<std::pair<std::vector<double>, std::vector<double>>> cases{
        {{2, -1, 5, 5, 0.25}, {0.029, -0.919, 1.112, 5, 5, 4.31228956229, 0.494137205387}},
        {{0, 1, 3, 4, 4.5},
         {0.108, 0.532, 1.78476190476, 3.61481588448, 3.97678263297, 4.2267719311, 4.49545697529}},
        {{0, 0.1, -4, 2, 2.2},
         {0.0657, 0.0973, -1.3432, -1.9200539629, 1.95965927825, 2.11121104241, 2.19977850228}},
        {{1, 2, -30, 4, 5},
         {1.657, 1.973, -9.264, -18.1928121827, 3.77940012183, 4.55705959767, 4.99889979319}}};
    for (const auto& [values, expected] : cases) {
        const Table table(uneven, values, monotone);
        for (std::size_t i = 0; i < at.size(); ++i)
            EXPECT_NEAR(table.at(at[i]).value, expected[i], 1e-10);
    }
}

TEST(Table, MonotoneOfTwoPointsIsTheLine) {
    EXPECT_DOUBLE_EQ(Table({0, 2}, {1, 5}, monotone).at(0.5).value, 2);
}

TEST(Grid, IsExactForProducts) {
    const std::vector<double> x{0, 1, 3}, y{-1, 2, 2.5, 6};
    std::vector<double> values;
    for (const double a : x)
        for (const double b : y)
            values.push_back(1 + 2 * a - b + 0.5 * a * b);
    const Grid grid(x, y, values);
    for (double a = 0; a <= 3; a += 0.21)
        for (double b = -1; b <= 6; b += 0.47) {
            EXPECT_NEAR(grid.at(a, b).value, 1 + 2 * a - b + 0.5 * a * b, 1e-13);
            EXPECT_TRUE(grid.at(a, b).in_range);
        }
}

TEST(Grid, ClampsAndSaysSoOnEitherAxis) {
    const Grid grid({0, 1}, {0, 1}, {1, 2, 3, 4});
    EXPECT_EQ(grid.at(0, 1).value, 2);
    EXPECT_EQ(grid.at(1, 0).value, 3);
    EXPECT_EQ(grid.at(-1, 0.5).value, 1.5);
    EXPECT_FALSE(grid.at(-1, 0.5).in_range);
    EXPECT_EQ(grid.at(0.5, 9).value, 3);
    EXPECT_FALSE(grid.at(0.5, 9).in_range);
}

std::string complaint(std::vector<double> x, std::vector<double> y) {
    try {
        const Table table(std::move(x), std::move(y));
        return "";
    } catch (const std::invalid_argument& error) {
        return error.what();
    }
}

TEST(Table, RefusesWhatIsNoTableInASentence) {
    EXPECT_EQ(complaint({0, 1, 1}, {1, 2, 3}),
              "the column of points must rise strictly: entry 3 is not greater than the one "
              "before it");
    EXPECT_EQ(complaint({0}, {1}), "the column of points needs at least two entries");
    EXPECT_EQ(complaint({0, 1}, {1}), "a table needs one value for each point");
    EXPECT_NE(complaint({0, std::nan("")}, {1, 2}), "");
    EXPECT_NE(complaint({0, 1}, {1, INFINITY}), "");
    EXPECT_EQ(complaint({0, 1}, {1, 2}), "");
}

TEST(Grid, RefusesWhatIsNoGrid) {
    EXPECT_THROW(Grid({0, 1}, {0, 1}, {1, 2, 3}), std::invalid_argument);
    EXPECT_THROW(Grid({1, 0}, {0, 1}, {1, 2, 3, 4}), std::invalid_argument);
    EXPECT_THROW(Grid({0, 1}, {0, 0}, {1, 2, 3, 4}), std::invalid_argument);
    EXPECT_THROW(Grid({0, 1}, {0, 1}, {1, 2, 3, std::nan("")}), std::invalid_argument);
}

}  // namespace
