#include "windwall/engine/spark.hpp"

#include <gtest/gtest.h>

namespace windwall::engine {
namespace {

constexpr double degree = std::numbers::pi / 180;

/// What the spark of best torque leaves, known to 4 octane numbers.
Spark best(double requirement, double fuel_index) {
    return {0, fuel_index - requirement, requirement, fuel_index, 4};
}

TEST(SparkPlan, KeepsTheBestSparkWhileTheMarginIsThere) {
    const Spark spark = SparkPlan{}.choose(300, best(90, 95));
    EXPECT_EQ(spark.retard, 0);
    EXPECT_DOUBLE_EQ(spark.margin, 5);
    EXPECT_TRUE(spark.by_spark);
}

TEST(SparkPlan, RetardsOneDegreeForEachOctaneNumber) {
    const Spark spark = SparkPlan{}.choose(300, best(100, 95));
    EXPECT_NEAR(spark.retard / degree, 7, 1e-12);
    EXPECT_NEAR(spark.margin, 2, 1e-12);
    EXPECT_NEAR(spark.requirement, 93, 1e-12);
    EXPECT_TRUE(spark.by_spark);
}

TEST(SparkPlan, AsGivenIsOneValueOrATable) {
    SparkPlan plan;
    plan.policy = SparkPolicy::as_given;
    ASSERT_TRUE(plan.check());
    EXPECT_EQ(plan.check()->key, "table");
    plan.stated_retard = 4 * degree;
    EXPECT_FALSE(plan.check());
    for (const double speed : {100.0, 300.0, 900.0})
        EXPECT_EQ(plan.choose(speed, best(90, 95)).retard, 4 * degree);
    plan.table.column = {{100, 500}, {0, 0.1}};
    EXPECT_TRUE(plan.check());  // two answers to one question
    plan.stated_retard.reset();
    EXPECT_FALSE(plan.check());
    EXPECT_NEAR(plan.choose(300, best(90, 95)).retard, 0.05, 1e-12);
}

TEST(SparkPlan, SaysWhereASparkAloneIsNotTheCheapest) {
    const Spark late = SparkPlan{}.choose(300, best(125, 95));
    EXPECT_NEAR(late.retard / degree, 32, 1e-12);
    EXPECT_NEAR(late.margin, 2, 1e-12);
    EXPECT_NEAR(late.margin_at_best(), -30, 1e-12);
    EXPECT_FALSE(late.by_spark);
    EXPECT_TRUE(SparkPlan{}.choose(300, best(103.9, 95)).by_spark);
    EXPECT_FALSE(SparkPlan{}.choose(300, best(104.1, 95)).by_spark);
    EXPECT_NEAR(SparkPlan{}.choose(300, best(150, 95)).retard / degree, 40, 1e-12);
}

// Half of what is known, unless the builder says what is to be kept.
TEST(SparkPlan, KeepsAMarginByWhatIsKnown) {
    SparkPlan plan;
    EXPECT_EQ(plan.wanted_margin(5), 2.5);
    EXPECT_EQ(plan.wanted_margin(10), 5);
    plan.margin = 3;
    EXPECT_EQ(plan.wanted_margin(10), 3);
}

TEST(SparkPlan, EnrichesFromElevenDegreesToTheRichest) {
    const SparkPlan plan;
    EXPECT_EQ(plan.enrichment(11 * degree, 0.88), 0);
    EXPECT_NEAR(plan.enrichment(13 * degree, 0.88), 0.034, 1e-12);
    EXPECT_NEAR(plan.enrichment(30 * degree, 0.88), 0.13, 1e-12);
    EXPECT_EQ(plan.enrichment(30 * degree, 0.70), 0);  // richer already
}

TEST(SparkPlan, ReadsTheTableAndHoldsItsEnds) {
    SparkPlan plan;
    plan.policy = SparkPolicy::as_given;
    plan.table.column = {{200, 400, 500}, {0.1, 0.2, 0.0}};
    EXPECT_DOUBLE_EQ(plan.choose(100, best(90, 95)).retard, 0.1);
    EXPECT_DOUBLE_EQ(plan.choose(200, best(90, 95)).retard, 0.1);
    EXPECT_DOUBLE_EQ(plan.choose(250, best(90, 95)).retard, 0.125);
    EXPECT_DOUBLE_EQ(plan.choose(475, best(90, 95)).retard, 0.05);
    EXPECT_DOUBLE_EQ(plan.choose(900, best(90, 95)).retard, 0.0);
    EXPECT_LT(plan.choose(900, best(110, 95)).margin, 0);
    EXPECT_TRUE(
        plan.choose(900, best(110, 95)).by_spark);  // a table asks for nothing it could miss
    EXPECT_NEAR(plan.choose(200, best(100, 95)).margin, 0.1 / degree - 5, 1e-12);
}

TEST(SparkPlan, ComplainsOfAMissingOrMixedUpTable) {
    SparkPlan plan;
    EXPECT_FALSE(plan.check());
    plan.policy = SparkPolicy::as_given;
    ASSERT_TRUE(plan.check());
    EXPECT_EQ(plan.check()->key, "table");
    plan.table.column = {{200, 400}, {0.1, 0.2}};
    EXPECT_FALSE(plan.check());
    plan.table.column = {{400, 400}, {0.1, 0.2}};
    EXPECT_TRUE(plan.check());
}

}  // namespace
}  // namespace windwall::engine
