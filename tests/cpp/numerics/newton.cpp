#include "windwall/numerics/newton.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include "numerics/problems.hpp"

namespace {

using namespace windwall::numerics;
using In = std::span<const double>;
using Out = std::span<double>;
using problems::extended_rosenbrock;

// Test functions 1, 7, 21 and 28 of More, Garbow, Hillstrom, ACM TOMS 7 (1981) 17.
void rosenbrock(In x, Out r) {
    r[0] = 10 * (x[1] - x[0] * x[0]);
    r[1] = 1 - x[0];
}

void helical_valley(In x, Out r) {
    const double turn = std::atan2(x[1], x[0]) / (2 * M_PI);
    r[0] = 10 * (x[2] - 10 * turn);
    r[1] = 10 * (std::hypot(x[0], x[1]) - 1);
    r[2] = x[2];
}

void discrete_boundary(In x, Out r) {
    const std::size_t n = x.size();
    const double h = 1.0 / (static_cast<double>(n) + 1);
    for (std::size_t i = 0; i < n; ++i) {
        const double before = i == 0 ? 0 : x[i - 1], after = i + 1 == n ? 0 : x[i + 1];
        const double t = (static_cast<double>(i) + 1) * h;
        r[i] = 2 * x[i] - before - after + h * h / 2 * std::pow(x[i] + t + 1, 3);
    }
}

TEST(Newton, SolvesRosenbrock) {
    std::array x{-1.2, 1.0};
    const NewtonResult result = solve_newton(rosenbrock, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_NEAR(x[0], 1, 1e-9);
    EXPECT_NEAR(x[1], 1, 1e-9);
    EXPECT_LE(result.norm, 1e-10);
}

TEST(Newton, SolvesTheHelicalValley) {
    std::array x{-1.0, 0.1, 0.2};
    const NewtonResult result = solve_newton(helical_valley, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_NEAR(x[0], 1, 1e-9);
    EXPECT_NEAR(x[1], 0, 1e-9);
    EXPECT_NEAR(x[2], 0, 1e-9);
}

TEST(Newton, SolvesSixteenUnknowns) {
    std::array<double, 16> x;
    for (std::size_t i = 0; i < 16; i += 2)
        x[i] = -1.2, x[i + 1] = 1;
    const NewtonResult result = solve_newton(extended_rosenbrock, x, {.max_evaluations = 2000});
    EXPECT_EQ(result.status, NewtonStatus::converged);
    for (const double xi : x)
        EXPECT_NEAR(xi, 1, 1e-9);
}

TEST(Newton, SolvesTheDiscreteBoundaryValueProblemWithOneJacobian) {
    std::array<double, 10> x;
    for (std::size_t i = 0; i < 10; ++i) {
        const double t = (static_cast<double>(i) + 1) / 11;
        x[i] = t * (t - 1);
    }
    const NewtonResult result = solve_newton(discrete_boundary, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_LE(result.evaluations, 1 + 10 + 6);
    std::array<double, 10> r;
    discrete_boundary(x, r);
    for (const double ri : r)
        EXPECT_NEAR(ri, 0, 1e-10);
}

TEST(Newton, ALinearSystemNeedsOneJacobianAndAtMostTwoSteps) {
    const auto linear = [](In x, Out r) {
        r[0] = 3 * x[0] - x[1] + 2;
        r[1] = x[0] + 4 * x[1] - 5;
        r[2] = x[2] - x[0] + 1;
    };
    std::array x{10.0, -20.0, 30.0};
    const NewtonResult result = solve_newton(linear, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_LE(result.evaluations, 1 + 3 + 2);
    EXPECT_NEAR(x[0], -3.0 / 13, 1e-9);
    EXPECT_NEAR(x[1], 17.0 / 13, 1e-9);
    EXPECT_NEAR(x[2], -16.0 / 13, 1e-9);
}

TEST(Newton, StartingAtTheSolutionCostsOneEvaluation) {
    std::array x{1.0, 1.0};
    const NewtonResult result = solve_newton(rosenbrock, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_EQ(result.evaluations, 1);
}

/// A neighbouring problem for each value of `shift`, as a sweep meets it.
struct Network {
    double shift;
    void operator()(In x, Out r) const {
        r[0] = std::exp(x[0]) - 1.2 * x[1] - shift;
        r[1] = x[1] * x[1] + x[2] - 2;
        r[2] = std::sqrt(1 + x[2] * x[2]) - x[0] * x[3];
        r[3] = x[3] * x[3] * x[3] - x[1] - shift;
    }
};

TEST(Newton, AWarmStartWithTheJacobianNeedsFewEvaluations) {
    std::array x{1.0, 1.0, 1.0, 1.0};
    JacobianMemory memory;
    const NewtonResult cold = solve_newton(Network{1.0}, x, {}, &memory);
    ASSERT_EQ(cold.status, NewtonStatus::converged);
    ASSERT_TRUE(memory.known);
    for (const double shift : {1.002, 1.004, 1.006, 1.008}) {
        const NewtonResult warm = solve_newton(Network{shift}, x, {}, &memory);
        EXPECT_EQ(warm.status, NewtonStatus::converged);
        EXPECT_LE(warm.evaluations, 6) << shift;
    }
    const NewtonResult near = solve_newton(Network{1.0085}, x, {.tolerance = 1e-7}, &memory);
    EXPECT_EQ(near.status, NewtonStatus::converged);
    EXPECT_LE(near.evaluations, 4);
}

// Gay and Schnabel (1978, from memory): where the residuals are linear, projected updates have told
// a Jacobian all of itself after as many steps as there are unknowns; Broyden's own needs twice
// as many.
TEST(Newton, LearnsALinearSystemInAsManyStepsAsUnknowns) {
    constexpr std::size_t n = 4;
    const auto linear = [](In x, Out r) {
        for (std::size_t i = 0; i < n; ++i) {
            r[i] = 2 * x[i] - 1;
            for (std::size_t k = 0; k < n; ++k)
                r[i] += 0.2 / static_cast<double>(i + 2 * k + 1) * x[k];
        }
    };
    std::array x{1.0, -2.0, 0.5, 3.0};
    JacobianMemory memory{2 * Matrix::Identity(n, n), true};  // not what the others do to it
    const NewtonResult result = solve_newton(linear, x, {1e-12}, &memory);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_LE(result.evaluations, static_cast<int>(n) + 2);  // the first, n steps and the last one
}

TEST(Newton, AWrongJacobianFromMemoryIsRenewed) {
    std::array x{-1.2, 1.0};
    JacobianMemory memory;
    memory.value = -Matrix::Identity(2, 2);
    memory.known = true;
    EXPECT_EQ(solve_newton(rosenbrock, x, {}, &memory).status, NewtonStatus::converged);
    EXPECT_NEAR(x[1], 1, 1e-9);

    memory.value = Matrix::Zero(2, 2);
    memory.known = true;
    x = {-1.2, 1.0};
    EXPECT_EQ(solve_newton(rosenbrock, x, {}, &memory).status, NewtonStatus::converged);

    memory.value = Matrix::Identity(5, 5);  // of another problem
    memory.known = true;
    x = {-1.2, 1.0};
    EXPECT_EQ(solve_newton(rosenbrock, x, {}, &memory).status, NewtonStatus::converged);
}

TEST(Newton, DampsAFullStepThatWouldDiverge) {
    std::array x{3.0};  // plain Newton on atan diverges from beyond 1.392
    const NewtonResult result = solve_newton([](In in, Out r) { r[0] = std::atan(in[0]); }, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_NEAR(x[0], 0, 1e-9);
}

TEST(Newton, ShortensAStepIntoMeaninglessValues) {
    std::array x{20.0};  // the first full step lands below zero, where the logarithm has no value
    const NewtonResult result = solve_newton([](In in, Out r) { r[0] = std::log(in[0]); }, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_NEAR(x[0], 1, 1e-9);
}

TEST(Newton, DifferencesBackwardsAtTheEdgeOfTheDomain) {
    std::array x{1.0};
    const auto edge = [](In in, Out r) { r[0] = 0.1 * std::pow(1 - in[0], 1.5) + in[0] - 0.7; };
    const NewtonResult result = solve_newton(edge, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_NEAR(0.1 * std::pow(1 - x[0], 1.5) + x[0], 0.7, 1e-9);
}

TEST(Newton, NeverMovesAnUnknownBeyondItsStepLimit) {
    std::array x{0.0, 0.0};
    std::array previous{0.0, 0.0};
    double largest = 0;
    const auto far_away = [&](In in, Out r) {
        largest = std::max(largest, std::abs(in[0] - previous[0]));
        previous[0] = in[0];
        r[0] = in[0] - 10;
        r[1] = in[1] - 0.1;
    };
    const std::array limit{0.5, 100.0};
    const NewtonResult result = solve_newton(far_away, x, {.step_limit = limit});
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_NEAR(x[0], 10, 1e-9);
    EXPECT_LE(largest, 0.5 + 1e-6);
    EXPECT_LE(result.evaluations, 1 + 2 + 22) << "limited steps must not renew the Jacobian";
}

TEST(Newton, ALimitThatIsKeptAlreadyLengthensNoStep) {
    std::array x{0.0, 0.0};
    double previous = 0, largest = 0;
    const auto far_away = [&](In in, Out r) {
        largest = std::max(largest, std::abs(in[0] - previous));
        previous = in[0];
        r[0] = in[0] - 10;
        r[1] = in[1] - 1.5;
    };
    const std::array limit{1.0, 1.0};
    EXPECT_EQ(solve_newton(far_away, x, {.step_limit = limit}).status, NewtonStatus::converged);
    EXPECT_LE(largest, 1 + 1e-6);
}

TEST(Newton, BadlyScaledUnknownsNeedTheScale) {
    // Pressure in Pa beside a flow in kg/s.
    const auto balance = [](In x, Out r) {
        r[0] = (x[0] - 9.5e4) / 1e5 + std::pow(x[1] / 0.02, 2) - 1;
        r[1] = x[0] / 1e5 - 40 * x[1];
    };
    std::array x{1e5, 0.03};
    const std::array scale{1e5, 0.02};
    const NewtonResult result = solve_newton(balance, x, {.scale = scale});
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_LE(result.evaluations, 10);
}

TEST(Newton, TheUnitOfAnUnknownChangesNothing) {
    const auto path = [](double unit) {
        std::vector<double> visited;
        const auto balance = [&](In x, Out r) {
            const double pressure = x[0] / unit;
            visited.push_back(pressure);
            r[0] = std::exp(pressure) - 3 * x[1];
            r[1] = pressure * pressure + std::sin(x[1]) - 2;
        };
        std::array x{0.5 * unit, 0.5};
        const std::array scale{unit, 1.0};
        EXPECT_EQ(solve_newton(balance, x, {.scale = scale}).status, NewtonStatus::converged);
        return visited;
    };
    const auto plain = path(1), scaled = path(65536);  // a power of two, so that rounding agrees
    EXPECT_GT(plain.size(), 4u);
    EXPECT_EQ(plain, scaled);
}

TEST(Newton, DifferencesALargeUnknownWithASmallScale) {
    std::array x{3e9};
    const auto root = [](In in, Out r) { r[0] = std::log(in[0] / 2e9); };
    const NewtonResult result = solve_newton(root, x);
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_NEAR(x[0], 2e9, 1);
}

TEST(Newton, NamesTheResidualThatStalls) {
    std::array x{2.0, 5.0};
    const auto impossible = [](In in, Out r) {
        r[0] = in[0] - 1;
        r[1] = in[1] * in[1] + 1;  // no root
    };
    const NewtonResult result = solve_newton(impossible, x);
    EXPECT_EQ(result.status, NewtonStatus::stalled);
    EXPECT_EQ(result.worst, 1);
    EXPECT_GE(result.norm, 1);
    EXPECT_LT(result.norm, 5) << "the best point found is kept";
}

TEST(Newton, KeepsItsBudget) {
    for (const int budget : {1, 2, 3, 5, 8}) {
        std::array x{-1.2, 1.0};
        int calls = 0;
        const auto counting = [&calls](In in, Out r) {
            ++calls;
            rosenbrock(in, r);
        };
        const NewtonResult result = solve_newton(counting, x, {.max_evaluations = budget});
        EXPECT_EQ(result.status, NewtonStatus::too_many);
        EXPECT_EQ(result.evaluations, calls);
        EXPECT_LE(calls, budget);
    }
}

TEST(Newton, StallsWhereTheStartHasNoValue) {
    std::array x{-1.0};
    const NewtonResult result = solve_newton([](In in, Out r) { r[0] = std::log(in[0]); }, x);
    EXPECT_EQ(result.status, NewtonStatus::stalled);
    EXPECT_TRUE(std::isnan(result.norm));
    EXPECT_EQ(x[0], -1.0);
}

TEST(Newton, RefusesSizesItDoesNotHold) {
    std::vector<double> none, many(most_unknowns + 1, 0.0);
    const auto zero = [](In, Out r) { std::fill(r.begin(), r.end(), 0.0); };
    EXPECT_THROW(solve_newton(zero, none), std::invalid_argument);
    EXPECT_THROW(solve_newton(zero, many), std::invalid_argument);
}

}  // namespace
