#include "windwall/scenario/header.hpp"
#include "windwall/scenario/migrate.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

/// Older files are brought up to date step by step. There is no older format yet, so the chain is
/// tried on made-up ones.
namespace windwall::scenario {
namespace {

constexpr Migration steps[] = {
    {"boat/1", "boat/2", [](fields::Json& root) { root["sails"] = 1; }},
    {"boat/2", "boat/3", [](fields::Json& root) { root["sails"] = root["sails"].get<int>() + 10; }},
};

TEST(Migration, StepsFollowEachOther) {
    EXPECT_EQ(migrate({{"format", "boat/1"}}, steps, "boat/3"),
              (fields::Json{{"format", "boat/3"}, {"sails", 11}}));
    EXPECT_EQ(migrate({{"format", "boat/2"}, {"sails", 5}}, steps, "boat/3"),
              (fields::Json{{"format", "boat/3"}, {"sails", 15}}));
    EXPECT_EQ(migrate({{"format", "boat/3"}}, steps, "boat/3"),
              (fields::Json{{"format", "boat/3"}}));
}

TEST(Migration, NothingComesOfAnUnknownFormat) {
    EXPECT_FALSE(migrate({{"format", "raft/1"}}, steps, "boat/3"));
    EXPECT_FALSE(migrate({{"format", 3}}, steps, "boat/3"));
}

TEST(Migration, TheFirstFormatHasNothingBehindIt) { EXPECT_TRUE(migrations().empty()); }

}  // namespace
}  // namespace windwall::scenario
