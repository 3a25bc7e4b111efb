#include "windwall/study/pairs.hpp"

#include "windwall/study/recommend.hpp"
#include "windwall/study/solve_sets.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "dice.hpp"

namespace windwall::study {
namespace {

/// Upgrade 3 needs 1, and 0 and 4 exclude each other.
Considered considered() {
    scenario::Relations stated{std::vector<scenario::UpgradeSet>(5, 0),
                               std::vector<scenario::UpgradeSet>(5, 0)};
    stated.required[3] = only(1);
    stated.excluded[0] = only(4);
    return {{0, 1, 2, 3, 4}, scenario::closed(stated)};
}

/// Every allowed set with a speed that nothing else decides.
std::vector<SetResult> random_sets(const Considered& menu) {
    std::vector<SetResult> sets;
    samples::Dice dice(3);
    for (const Set set : allowed_sets(menu.relations)) {
        SetResult& one = sets.emplace_back();
        one.set = set;
        one.answered = one.recommended = true;
        one.cost = static_cast<double>(set);
        for (double& speed : one.speed)
            speed = dice.between(30, 40);
    }
    return sets;
}

std::vector<UpgradeGain> gains(const Considered& menu, const std::vector<SetResult>& sets,
                               const RankOptions& options = {}) {
    std::vector<UpgradeGain> made(5);
    for (std::size_t i = 0; i < 5; ++i)
        made[i].id = std::to_string(i);
    add_partners(
        menu.relations, SolvedSets(sets),
        [&](const SetResult& one) { return recommendable(one, options); }, made);
    return made;
}

double speed(const std::vector<SetResult>& sets, Set set) { return SolvedSets(sets).speed(set, 1); }

TEST(Pairs, AreTheBestOfAllThatThereAre) {
    const auto menu = considered();
    const auto sets = random_sets(menu);
    const auto found = gains(menu, sets);
    for (std::size_t i = 0; i < 5; ++i) {
        double together = 0, most = 0, least = 0;
        for (std::size_t j = 0; j < 5; ++j) {
            // What 3 needs comes along, with and without the other.
            const Set needs = i == 3 || j == 3 ? only(1) & ~only(i) & ~only(j) : 0;
            const double both = speed(sets, needs | only(i) | only(j));
            if (i == j || std::isnan(both)) continue;
            together = std::max(together, both - speed(sets, 0));
            const double first = speed(sets, needs | only(i)),
                         second = speed(sets, needs | only(j));
            const double interaction = both - first - second + speed(sets, needs);
            if (std::isnan(interaction)) continue;
            most = std::max(most, interaction);
            least = std::min(least, interaction);
        }
        ASSERT_TRUE(found[i].best_pair);
        EXPECT_DOUBLE_EQ(found[i].best_pair->together[middle], together) << i;
        const auto& helped = found[i].most_helped;
        const auto& hindered = found[i].most_hindered;
        EXPECT_NEAR(helped ? helped->interaction[middle] : 0, most, 1e-12) << i;
        EXPECT_NEAR(hindered ? hindered->interaction[middle] : 0, least, 1e-12) << i;
    }
}

TEST(Pairs, HoldWhatTheyRequireAndNothingExcluded) {
    const auto menu = considered();
    const auto sets = random_sets(menu);
    for (const UpgradeGain& gain : gains(menu, sets))
        for (const auto& one : {gain.best_pair, gain.most_helped, gain.most_hindered}) {
            if (!one) continue;
            EXPECT_TRUE(allowed(menu.relations, sets[one->pair].set));
            EXPECT_TRUE(holds(sets[one->pair].set, std::stoul(one->id)));
            EXPECT_TRUE(holds(sets[one->pair].set, std::stoul(gain.id)));
        }
}

// An upgrade and one that needs it are a pair, but what one does for the other nobody can say.
TEST(Pairs, WhatNeedsTheOtherHasNoInteractionWithIt) {
    const auto menu = considered();
    auto sets = random_sets(menu);
    for (SetResult& one : sets)
        if (one.set == (only(1) | only(3))) one.speed.fill(99);
    const auto found = gains(menu, sets);
    EXPECT_EQ(found[1].best_pair->id, "3");
    EXPECT_EQ(found[3].best_pair->id, "1");
    EXPECT_TRUE(std::isnan(found[3].best_pair->interaction[middle]));
    EXPECT_NE(found[3].most_helped ? found[3].most_helped->id : "", "1");
    EXPECT_NE(found[1].most_helped ? found[1].most_helped->id : "", "3");
}

// Where a rev limit ends two pairs, the one that costs less is named.
TEST(Pairs, OfEqualOnesTheCheapest) {
    const auto menu = considered();
    auto sets = random_sets(menu);
    for (SetResult& one : sets) {
        if (one.set == (only(2) | only(4))) one.speed.fill(98.99);
        if (one.set == (only(2) | only(0))) one.speed.fill(98.98);
    }
    EXPECT_EQ(gains(menu, sets)[2].best_pair->id, "0");
    for (SetResult& one : sets)
        if (one.set == (only(2) | only(4))) one.speed.fill(99.1);
    EXPECT_EQ(gains(menu, sets)[2].best_pair->id, "4");
}

// What an upgrade adds to where answers end, or from there, is no example of anything.
TEST(Pairs, NoneWhosePullEndsWithoutAnAnswerIsAnExample) {
    const auto menu = considered();
    auto sets = random_sets(menu);
    for (SetResult& one : sets) {
        if (one.set == only(0)) one.speed.fill(1);  // so that it helps every other beyond measure
        if (one.set == (only(2) | only(4))) one.speed.fill(99);
    }
    ASSERT_EQ(gains(menu, sets)[1].most_helped->id, "0");
    ASSERT_EQ(gains(menu, sets)[2].best_pair->id, "4");
    for (SetResult& one : sets) {
        const bool ends = one.set == only(0) || one.set == (only(2) | only(4));
        if (!ends) continue;
        one.cut_short = {middle};
        one.recommended = false;
    }
    const auto found = gains(menu, sets);
    EXPECT_NE(found[1].most_helped ? found[1].most_helped->id : "", "0");
    EXPECT_NE(found[2].best_pair->id, "4");
}

TEST(Pairs, NoneIsNamedThatMayNotBe) {
    const auto menu = considered();
    const auto sets = random_sets(menu);
    RankOptions options;
    options.budget = 11;  // a set costs its own number
    for (const UpgradeGain& gain : gains(menu, sets, options)) {
        if (gain.best_pair) {
            EXPECT_LE(sets[gain.best_pair->pair].cost, 11);
        }
    }
    EXPECT_FALSE(gains(menu, sets, options)[4].best_pair);
}

}  // namespace
}  // namespace windwall::study
