// In a file of its own, since it counts every call of malloc in this program.
#include "windwall/numerics/newton.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cstdlib>
#include <vector>

#include "numerics/problems.hpp"

#if defined(__GLIBC__) && !defined(__SANITIZE_ADDRESS__)
#define COUNTS_ALLOCATIONS 1
// glibc's own entry, so that the test sees every allocation, Eigen's included.
extern "C" void* __libc_malloc(std::size_t size);
static thread_local long allocations = 0;
extern "C" void* malloc(std::size_t size) {
    ++allocations;
    return __libc_malloc(size);
}
#endif

namespace {

using namespace windwall::numerics;
using In = std::span<const double>;
using Out = std::span<double>;
using problems::extended_rosenbrock;

#ifdef COUNTS_ALLOCATIONS
TEST(Newton, AllocatesNothing) {
    std::array<double, 16> x;
    for (std::size_t i = 0; i < 16; i += 2)
        x[i] = -1.2, x[i + 1] = 1;
    JacobianMemory memory;
    memory.value = Matrix::Zero(16, 16);
    const NewtonOptions long_enough{.max_evaluations = 2000};
    const long before = allocations;
    const NewtonResult result = solve_newton(extended_rosenbrock, x, long_enough, &memory);
    std::array y{2.0, 5.0};
    const auto singular = [](In in, Out r) { r[0] = r[1] = in[0] + in[1] - 1; };
    const NewtonResult least_squares = solve_newton(singular, y);
    const long after = allocations;
    EXPECT_EQ(result.status, NewtonStatus::converged);
    EXPECT_EQ(least_squares.status, NewtonStatus::converged);
    EXPECT_EQ(after, before);
    const std::vector<double> counted(100, 1.0);
    EXPECT_GT(allocations, after) << "the counter itself must count";
}
#endif

}  // namespace
