#include "windwall/driveline/train.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/answer/curve.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/study/columns.hpp"
#include "windwall/study/rank.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "solve/samples.hpp"

/// Whatever is asked of the core, an exception inside it is an outcome.
namespace windwall::study {
namespace {

using solve::Status;

vehicle::ChargePath too_many_throttles() {
    vehicle::ChargePath path;
    for (std::size_t i = 0; i < vehicle::Unknowns::most; ++i)
        path.push_back({"throttle_" + std::to_string(i), sample::throttle()});
    return path;
}

/// More than a balance has room for, which no file may ask for.
vehicle::Vehicle unbalanceable() {
    vehicle::Vehicle car = sample::cyclecar();
    car.charge_path = too_many_throttles();
    return car;
}

/// A worker that would not return from what its vehicle throws.
BatchOptions on(unsigned threads) { return {threads, {}}; }

TEST(BrokenOff, TheVehicleThrowsIndeed) {
    EXPECT_THROW(vehicle::Balance{unbalanceable()}, std::length_error);
}

TEST(BrokenOff, IsHowATopSpeedEnds) {
    const solve::TopSpeed found = solve::top_speed(unbalanceable());
    EXPECT_EQ(found.outcome.status, Status::broken_off);
    EXPECT_FALSE(found.equilibrium.full_throttle);
}

// Thrown in the middle of the solve, once there are points.
TEST(BrokenOff, IsHowATopSpeedEndsHalfWay) {
    struct ThrowsAtTheThird : solve::Watch {
        int left = 3;
        void read(const vehicle::Balance&, solve::FullThrottlePoint&) override {
            if (--left == 0) throw std::invalid_argument("the points of a spline rise strictly");
        }
        void read_road(const vehicle::Vehicle&, solve::FullThrottlePoint&) override {}
    } watch;
    const solve::TopSpeed found = solve::top_speed(sample::cyclecar(), {}, &watch);
    EXPECT_EQ(watch.left, 0);
    EXPECT_EQ(found.outcome.status, Status::broken_off);
}

TEST(BrokenOff, IsHowAnAnswerEnds) {
    for (const auto& answer :
         {solve::answer_speed(unbalanceable()), solve::answer_speed_briefly(unbalanceable())}) {
        EXPECT_EQ(answer.ending.status, Status::broken_off);
        ASSERT_TRUE(answer.unanswered);
        EXPECT_EQ(answer.unanswered->ending.status, Status::broken_off);
    }
}

TEST(BrokenOff, IsHowAPointEnds) {
    const auto answer = solve::answer_point(unbalanceable(), {300, 20, 0.5});
    EXPECT_EQ(answer.ending.status, Status::broken_off);
    EXPECT_EQ(answer.engine_speed, 300);
    EXPECT_EQ(answer.opening, 0.5);
    EXPECT_FALSE(answer.point);
}

TEST(BrokenOff, IsHowACurveEnds) {
    const solve::Curve curve = solve::full_throttle_curve(unbalanceable(), 2, 5);
    EXPECT_EQ(curve.status, std::vector{Status::broken_off});
    const auto gear = std::ranges::find(curve.addresses, "road/gear") - curve.addresses.begin();
    ASSERT_LT(gear, std::ssize(curve.addresses));
    for (std::size_t k = 0; k < curve.columns.size(); ++k) {
        ASSERT_EQ(curve.columns[k].size(), 1u);
        if (std::ssize(curve.addresses) - gear == std::ssize(curve.addresses) - std::ptrdiff_t(k))
            EXPECT_EQ(curve.columns[k][0], 3);
        else
            EXPECT_TRUE(std::isnan(curve.columns[k][0])) << curve.addresses[k];
    }
}

TEST(BrokenOff, IsHowVariantsEndOnEveryThread) {
    vehicle::Vehicle car = unbalanceable();
    const auto path = fields::find_number(fields::group_type<vehicle::Vehicle>, &car, "body/mass");
    const std::vector<double> masses(20, 300.0);
    for (unsigned threads : {1u, 3u}) {
        const AnswerColumns answers =
            solve_columns(car, {{*path}, {masses}}, {"manifold/boost"}, on(threads));
        for (std::size_t i = 0; i < masses.size(); ++i) {
            EXPECT_EQ(answers.status[i], Status::broken_off);
            EXPECT_TRUE(std::isnan(answers.speed[i]));
        }
    }
}

// What is read after the speed: the first variant breaks there, and the next ones are solved.
TEST(BrokenOff, IsHowVariantsEndWhoseResultsAreNotThere) {
    vehicle::Vehicle car = sample::cyclecar();
    const auto path = fields::find_number(fields::group_type<vehicle::Vehicle>, &car, "body/mass");
    const auto stop = [](std::size_t, std::size_t) -> bool { throw std::runtime_error("stop"); };
    const AnswerColumns answers =
        solve_columns(car, {{*path}, {std::vector<double>(200, 348.0)}}, {}, {1, stop});
    EXPECT_EQ(answers.status.back(), Status::broken_off);
}

scenario::Scenario menu_of_two() {
    scenario::Scenario made;
    made.vehicle = unbalanceable();
    for (const char* id : {"one", "two"}) {
        scenario::Upgrade upgrade;
        upgrade.id = id;
        made.menu.push_back(upgrade);
    }
    return made;
}

TEST(BrokenOff, IsWhyNoSetOfARankingHasAnAnswer) {
    for (unsigned threads : {1u, 3u}) {
        RankOptions options;
        options.batch = on(threads);
        const Ranking ranking = rank(menu_of_two(), options);
        EXPECT_EQ(ranking.status, Status::solved);
        ASSERT_EQ(ranking.sets.size(), 4u);
        for (const SetResult& set : ranking.sets) {
            EXPECT_FALSE(set.answered);
            EXPECT_EQ(set.refused_for, Refusal::no_answer);
            ASSERT_TRUE(set.unanswered);
            EXPECT_EQ(set.unanswered->ending.status, Status::broken_off);
            EXPECT_TRUE(std::isnan(set.speed[middle]));
        }
    }
}

TEST(BrokenOff, IsHowARankingEndsThatIsBrokenOffOutsideOfItsSets) {
    RankOptions options;
    options.batch = {1, [](std::size_t, std::size_t) -> bool { throw std::runtime_error("stop"); }};
    const Ranking ranking = rank(menu_of_two(), options);
    EXPECT_EQ(ranking.status, Status::broken_off);
    EXPECT_EQ(ranking.considered, 2u);
}

}  // namespace
}  // namespace windwall::study
