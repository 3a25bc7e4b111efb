#include "windwall/study/recommend.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace windwall::study {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

SetResult set(double cost, std::array<double, anchors> speed) {
    SetResult made;
    made.answered = made.recommended = true;
    made.cost = cost;
    made.speed = speed;
    return made;
}

constexpr double least_told = 0.5;  // m/s

std::size_t told(const std::vector<SetResult>& sets, RankOptions options = {}) {
    return cheapest_alike(sets, *fastest_set(sets, options), least_told, options);
}

TEST(Recommend, ALeadThatNobodyCanTellIsNotPaidFor) {
    EXPECT_EQ(told({set(100, {38, 38, 38}), set(700, {39.6, 39.6, 39.6}), set(1200, {40, 40, 40})}),
              1u);
    EXPECT_EQ(told({set(100, {38, 38, 38}), set(700, {39.4, 39.4, 39.4}), set(1200, {40, 40, 40})}),
              2u);
}

TEST(Recommend, NorWhereTheKnockAnchorMayBeSomewhereElse) {
    // Alike here, but 0.6 behind at the upper anchor.
    EXPECT_EQ(told({set(700, {40, 39.9, 39.4}), set(1200, {40, 40, 40})}), 1u);
    EXPECT_EQ(told({set(700, {40, 39.9, 39.6}), set(1200, {40, 40, 40})}), 0u);
    EXPECT_EQ(told({set(700, {39.4, 39.9, 40}), set(1200, {40, 40, 40})}), 1u);
    // Where it has no answer it is not alike.
    EXPECT_EQ(told({set(700, {40, 39.9, nan}), set(1200, {40, 40, 40})}), 1u);
    const auto lead = lead_of(set(0, {40, 40, 40}), set(0, {39, 39.5, 38}));
    EXPECT_EQ(lead, (std::array{1.0, 0.5, 2.0}));
}

// A rev limit ends two sets at speeds that differ in the last digits alone.
TEST(Recommend, OfEquallyFastOnesTheCheapest) {
    std::vector<SetResult> sets{set(1200, {40.001, 40, 40}), set(300, {40, 39.995, 40}),
                                set(600, {40, 40.002, 40}), set(100, {40, 39.9, 40})};
    EXPECT_EQ(fastest_set(sets, {}), 1u);
    EXPECT_EQ(cheapest_to(sets, 40, {}), 2u);
    EXPECT_EQ(best_by(sets, &SetResult::cost, {}), (std::vector<std::size_t>{3, 1}));
    EXPECT_EQ(best_by(sets, &SetResult::hours, {}), (std::vector<std::size_t>{1}));
}

TEST(Recommend, OfEquallyCheapOnesTheFaster) {
    EXPECT_EQ(
        told({set(700, {39.7, 39.7, 39.7}), set(700, {39.9, 39.9, 39.9}), set(1200, {40, 40, 40})}),
        1u);
}

TEST(Recommend, NeitherBeyondTheBudgetNorALimit) {
    std::vector<SetResult> sets{set(100, {38, 38, 38}), set(700, {39, 39, 39}),
                                set(1200, {40, 40, 40}), set(300, {41, 41, 41})};
    sets[3].recommended = false;
    RankOptions options;
    EXPECT_EQ(fastest_set(sets, options), 2u);
    options.budget = 800;
    EXPECT_EQ(fastest_set(sets, options), 1u);
    EXPECT_EQ(told(sets, options), 1u);
    EXPECT_EQ(best_by(sets, &SetResult::cost, options), (std::vector<std::size_t>{0, 1}));
    options.budget = 50;
    EXPECT_FALSE(fastest_set(sets, options));
    EXPECT_TRUE(best_by(sets, &SetResult::hours, options).empty());
}

}  // namespace
}  // namespace windwall::study
