#include "windwall/engine/spark.hpp"

#include <gtest/gtest.h>

namespace windwall::engine {
namespace {

constexpr double degree = std::numbers::pi / 180;

TEST(SparkPlan, KeepsTheBestSparkWhileTheMarginIsThere) {
    const Spark spark = SparkPlan{}.choose(300, 90, 95);
    EXPECT_EQ(spark.retard, 0);
    EXPECT_DOUBLE_EQ(spark.margin, 5);
    EXPECT_TRUE(spark.in_range);
}

TEST(SparkPlan, RetardsOneDegreeForEachOctaneNumber) {
    const Spark spark = SparkPlan{}.choose(300, 100, 95);
    EXPECT_NEAR(spark.retard / degree, 7, 1e-12);
    EXPECT_NEAR(spark.margin, 2, 1e-12);
    EXPECT_NEAR(spark.requirement, 93, 1e-12);
    EXPECT_TRUE(spark.in_range);
}

TEST(SparkPlan, SaysWhenTheMostRetardIsNotEnough) {
    const Spark spark = SparkPlan{}.choose(300, 125, 95);
    EXPECT_NEAR(spark.retard / degree, 25, 1e-12);
    EXPECT_NEAR(spark.margin, -5, 1e-12);
    EXPECT_FALSE(spark.in_range);
    EXPECT_TRUE(SparkPlan{}.choose(300, 118, 95).in_range);
}

TEST(SparkPlan, ReadsTheTableAndHoldsItsEnds) {
    SparkPlan plan;
    plan.policy = SparkPolicy::as_given;
    plan.table.column = {{200, 400, 500}, {0.1, 0.2, 0.0}};
    EXPECT_DOUBLE_EQ(plan.choose(100, 90, 95).retard, 0.1);
    EXPECT_DOUBLE_EQ(plan.choose(200, 90, 95).retard, 0.1);
    EXPECT_DOUBLE_EQ(plan.choose(250, 90, 95).retard, 0.125);
    EXPECT_DOUBLE_EQ(plan.choose(475, 90, 95).retard, 0.05);
    EXPECT_DOUBLE_EQ(plan.choose(900, 90, 95).retard, 0.0);
    EXPECT_LT(plan.choose(900, 110, 95).margin, 0);
    EXPECT_TRUE(plan.choose(900, 110, 95).in_range);  // a table asks for nothing it could miss
    EXPECT_NEAR(plan.choose(200, 100, 95).margin, 0.1 / degree - 5, 1e-12);
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
