#include "windwall/solve/full_throttle/starts.hpp"

#include <gtest/gtest.h>

namespace windwall::solve {
namespace {

double cubic(double x) { return 3 + x * (-2 + x * (0.5 - 0.1 * x)); }

PointSolver::State state(double first, bool knocked = false) {
    PointSolver::State made;
    made.unknowns[0] = first;
    made.warm = true;
    made.knocked = knocked;
    return made;
}

// Four points tell a cubic, between them and beyond.
TEST(Starts, FollowACubicExactly) {
    Starts starts;
    for (const double speed : {5.0, 3.5, 2.0, 1.0})
        starts.add(speed, state(cubic(speed)));
    for (const double speed : {0.2, 1.5, 3.5, 6.0}) {
        const PointSolver::State expected = starts.expected_at(speed);
        EXPECT_NEAR(expected.unknowns[0], cubic(speed), 1e-12) << speed;
        EXPECT_TRUE(expected.warm);
    }
}

TEST(Starts, KeepTheFirstOfThoseAtOneEngineSpeed) {
    Starts starts;
    starts.add(2, state(cubic(2)));
    starts.add(2, state(100));  // in another wind
    for (const double speed : {3.0, 4.0, 5.0})
        starts.add(speed, state(cubic(speed)));
    EXPECT_NEAR(starts.expected_at(2.5).unknowns[0], cubic(2.5), 1e-12);
}

// The unknowns of a held knock stand behind the others and mean nothing without it.
TEST(Starts, DoNotMixWhatIsHeldOffKnockWithWhatIsNot) {
    Starts starts;
    for (const double speed : {1.0, 2.0, 3.0, 4.0})
        starts.add(speed, state(cubic(speed)));
    starts.add(5, state(7, true));
    EXPECT_NEAR(starts.expected_at(4.4).unknowns[0], cubic(4.4), 1e-12);
    EXPECT_EQ(starts.expected_at(4.6).unknowns[0], 7);
    EXPECT_TRUE(starts.expected_at(4.6).knocked);
}

}  // namespace
}  // namespace windwall::solve
