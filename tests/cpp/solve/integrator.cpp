// The method that a drive goes through time by, on equations whose solutions are known.
#include "windwall/solve/drive/integrator.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <span>
#include <vector>

namespace windwall::solve {
namespace {

void swing(double, std::span<const double> state, std::span<double> rate) {
    rate[0] = state[1];
    rate[1] = -state[0];
}

/// Error after steps of one size, and the largest between the ends of the steps.
struct Errors {
    double at_end{}, within{};
};

Errors errors(double step) {
    Integrator integrator(1);  // any error passes: the steps are as long as they may be
    const std::vector<double> start{1, 0};
    integrator.start(0, start, step);
    Errors found;
    std::vector<double> between;
    while (integrator.time() < 4 - step / 2) {
        integrator.step(swing, step);
        for (const double share : {0.3, 0.6}) {
            const double time = integrator.before() + share * step;
            integrator.state_at(time, between);
            found.within = std::max(found.within, std::abs(between[0] - std::cos(time)));
        }
    }
    found.at_end = std::abs(integrator.state()[0] - std::cos(integrator.time()));
    return found;
}

}  // namespace

// Half the step, a thirty-second of the error: the fifth order, and the fourth between the steps.
TEST(Integrator, IsOfFifthOrder) {
    const Errors coarse = errors(0.1), fine = errors(0.05);
    const double order = std::log2(coarse.at_end / fine.at_end);
    EXPECT_NEAR(order, 5, 0.3);
    EXPECT_GT(std::log2(coarse.within / fine.within), 3.7);
}

TEST(Integrator, KeepsItsTolerance) {
    for (const double tolerance : {1e-5, 1e-8, 1e-11}) {
        Integrator integrator(tolerance);
        const std::vector<double> start{1, 0};
        integrator.start(0, start, 1e-3);
        while (integrator.time() < 10)
            ASSERT_TRUE(integrator.step(swing, 1));
        EXPECT_LT(std::abs(integrator.state()[0] - std::cos(integrator.time())), 30 * tolerance);
    }
}

}  // namespace windwall::solve
