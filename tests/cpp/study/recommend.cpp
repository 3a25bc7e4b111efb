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

/// Half a metre a second is no lead, and the anchor is known to half a step.
const Telling telling{0.5, 0.5};

std::size_t told(const std::vector<SetResult>& sets, RankOptions options = {}) {
    return cheapest_alike(sets, *fastest_set(sets, options), telling, options);
}

TEST(Recommend, ALeadThatNobodyCanTellIsNotPaidFor) {
    EXPECT_EQ(told({set(100, {38, 38, 38}), set(700, {39.6, 39.6, 39.6}), set(1200, {40, 40, 40})}),
              1u);
    EXPECT_EQ(told({set(100, {38, 38, 38}), set(700, {39.4, 39.4, 39.4}), set(1200, {40, 40, 40})}),
              2u);
}

TEST(Recommend, NorWhereTheKnockAnchorMayBeSomewhereElse) {
    // Alike here, but 0.6 behind half way to the upper anchor.
    EXPECT_EQ(told({set(700, {40, 39.9, 38.9}), set(1200, {40, 40, 40})}), 1u);
    EXPECT_EQ(told({set(700, {40, 39.9, 39.3}), set(1200, {40, 40, 40})}), 0u);
    EXPECT_EQ(told({set(700, {38.9, 39.9, 40}), set(1200, {40, 40, 40})}), 1u);
    // Where it has no answer it is not alike.
    EXPECT_EQ(told({set(700, {40, 39.9, nan}), set(1200, {40, 40, 40})}), 1u);
    const auto lead = lead_of(set(0, {40, 40, 40}), set(0, {39, 39.5, 38}), telling);
    EXPECT_EQ(lead, (std::array{0.75, 0.5, 1.25}));
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
