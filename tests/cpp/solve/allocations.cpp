// A warm point takes no memory from the heap: not in a residual, not in what is made of it.
#include "allocations.hpp"

#include "windwall/solve/point/point.hpp"

#include <gtest/gtest.h>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;

TEST(NoAllocation, InAWarmPoint) {
    for (const vehicle::Vehicle& car : {sample::cyclecar(), sample::cooled_cyclecar()}) {
        PointSolver solver(car);
        solver.at({3000 * rpm, 20, 1});
        double sum = 0;
        const std::size_t before = allocations();
        for (double speed = 3000; speed <= 6000; speed += 250)
            sum += solver.at({speed * rpm, 25, 1}).torque;
        EXPECT_EQ(allocations(), before);
        EXPECT_GT(sum, 0);
    }
    const auto* counted = new int(1);
    const std::size_t after = allocations();
    delete counted;
    EXPECT_GT(after, 0u);
}

TEST(NoAllocation, InAResidual) {
    const vehicle::Vehicle car = sample::cooled_cyclecar();
    vehicle::Balance balance(car);
    balance.hold({4000 * rpm, 20, 1});
    std::array<double, numerics::most_unknowns> x{}, r{};
    const std::span<double> unknowns(x.data(), balance.unknowns().size());
    const std::span<double> residuals(r.data(), balance.unknowns().size());
    const auto evaluate = [&] {
        balance.guess(unknowns);
        balance.residuals(unknowns, residuals);
    };
    evaluate();  // tables that are made once for the whole program
    const std::size_t before = allocations();
    evaluate();
    EXPECT_EQ(allocations(), before);
}

}  // namespace
}  // namespace windwall::solve
