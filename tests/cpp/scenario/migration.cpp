#include "windwall/scenario/header.hpp"
#include "windwall/scenario/migrate.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

/// Older files are brought up to date step by step; the chain is tried on made-up formats too.
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

TEST(Migration, EndsAtTheCurrentFormat) {
    ASSERT_FALSE(migrations().empty());
    EXPECT_EQ(migrations().back().to, current_format);
}

TEST(Migration, KeepsTheSwitchAtItsNozzle) {
    const fields::Json old = fields::Json::parse(R"({
        "format": "windwall-scenario/1",
        "charge_path": [
            {"id": "jet", "kind": "evaporative_injection", "starts_at": "-5 kPa"},
            {"id": "mist", "kind": "evaporative_injection"}, 7],
        "upgrades": [
            {"insert": [{"part": {"id": "second", "kind": "evaporative_injection",
                                  "starts_at": "5 kPa"}}],
             "replace": {"jet": {"kind": "evaporative_injection", "starts_at": "2 kPa"}},
             "set": {"charge_path/mist/starts_at": "3 kPa"}}, []]})");
    const auto made = migrate(old, migrations(), current_format);
    ASSERT_TRUE(made);
    EXPECT_EQ(made->at("charge_path")[0].at("starts_where"), "jet");
    EXPECT_FALSE(made->at("charge_path")[1].contains("starts_where"));
    const fields::Json& upgrade = made->at("upgrades")[0];
    EXPECT_EQ(upgrade.at("insert")[0].at("part").at("starts_where"), "second");
    EXPECT_EQ(upgrade.at("replace").at("jet").at("starts_where"), "jet");
    EXPECT_EQ(upgrade.at("set").at("charge_path/mist/starts_where"), "mist");
}

}  // namespace
}  // namespace windwall::scenario
