#include "windwall/numerics/root.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <numbers>

namespace {

using namespace windwall::numerics;

TEST(Root, FindsKnownRoots) {
    const Root cosine = find_root([](double x) { return std::cos(x); }, 1, 2);
    EXPECT_TRUE(cosine.converged);
    EXPECT_NEAR(cosine.x, std::numbers::pi / 2, 1e-12);

    // Omega constant, x e^x = 1: OEIS A030178.
    const Root omega = find_root([](double x) { return x * std::exp(x) - 1; }, 0, 1);
    EXPECT_TRUE(omega.converged);
    EXPECT_NEAR(omega.x, 0.5671432904097838, 1e-12);
    EXPECT_NEAR(omega.residual, 0, 1e-11);
}

TEST(Root, NeedsFewEvaluationsWhereTheFunctionIsSmooth) {
    const Root root = find_root([](double x) { return std::exp(x) - 5; }, 0, 4);
    EXPECT_TRUE(root.converged);
    EXPECT_LE(root.evaluations, 14);
}

TEST(Root, CountsEveryEvaluation) {
    int calls = 0;
    const auto counting = [&calls](double x) {
        ++calls;
        return x * x * x - 2;
    };
    const Root root = find_root(counting, 0, 2);
    EXPECT_EQ(root.evaluations, calls);
}

TEST(Root, TakesARootAtAnEnd) {
    const Root low = find_root([](double x) { return x - 1; }, 1, 2);
    EXPECT_TRUE(low.converged);
    EXPECT_EQ(low.x, 1);
    const Root high = find_root([](double x) { return x - 2; }, 1, 2);
    EXPECT_TRUE(high.converged);
    EXPECT_EQ(high.x, 2);
}

TEST(Root, SaysThatTheSignsDoNotDiffer) {
    const Root root = find_root([](double x) { return x * x + 1; }, -1, 2);
    EXPECT_FALSE(root.converged);
    EXPECT_EQ(root.evaluations, 2);
    EXPECT_EQ(root.x, -1);
    EXPECT_EQ(root.residual, 2);
}

TEST(Root, SaysThatTheFunctionHasNoValue) {
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(find_root([=](double) { return nothing; }, 0, 1).converged);
    // A value at both ends but none between.
    const auto hole = [=](double x) { return x < 0.1 || x > 0.9 ? x - 0.5 : nothing; };
    EXPECT_FALSE(find_root(hole, 0, 1).converged);
}

TEST(Root, SaysThatTheBudgetIsSpent) {
    const auto function = [](double x) { return std::exp(20 * x) - 2; };
    const Root root = find_root(function, 0, 100, {.max_evaluations = 6});
    EXPECT_FALSE(root.converged);
    EXPECT_LE(root.evaluations, 7);
}

TEST(Root, LooseToleranceCostsLess) {
    const auto function = [](double x) { return std::tanh(x - 1.3); };
    const Root loose = find_root(function, 0, 10, {.absolute = 1e-3, .relative = 0});
    const Root tight = find_root(function, 0, 10);
    EXPECT_TRUE(loose.converged);
    EXPECT_NEAR(loose.x, 1.3, 1e-3);
    EXPECT_NEAR(tight.x, 1.3, 1e-11);
    EXPECT_LT(loose.evaluations, tight.evaluations);
}

TEST(Root, ReportsALargeResidualAtAPole) {
    const Root root = find_root([](double x) { return 1 / (x - 0.3); }, 0, 1);
    EXPECT_GT(std::abs(root.residual), 1e3);
}

}  // namespace
