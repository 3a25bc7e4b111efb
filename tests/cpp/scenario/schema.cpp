#include "windwall/scenario/schema.hpp"

#include <set>

#include "files.hpp"

/// The schema knows every key of a file, and no other.
namespace windwall::scenario {
namespace {

TEST(Schema, KnowsEveryKeyOfTheRoot) {
    const auto properties = schema()["properties"];
    const auto car = fields::Json::parse(read_file("airfield_cyclecar.json"));
    for (const auto& [key, value] : car.items())
        EXPECT_TRUE(properties.contains(key)) << key;
    EXPECT_FALSE(schema()["additionalProperties"].get<bool>());
}

TEST(Schema, AsksForWhatTheSmallestFileHas) {
    const auto whole = schema();
    const auto smallest = fields::Json::parse(read_file("village_microcar.json"));
    std::set<std::string> asked, stated;
    for (const auto& key : whole["required"])
        asked.insert(key.get<std::string>());
    for (const auto& [key, value] : smallest.items())
        stated.insert(key);
    EXPECT_EQ(asked, stated);
}

TEST(Schema, KnowsEveryVerb) {
    const auto upgrade = schema()["properties"]["upgrades"]["items"]["properties"];
    for (const std::string verb : {"replace", "remove", "insert", "set", "choose", "scale", "add"})
        EXPECT_TRUE(upgrade.contains(verb)) << verb;
    EXPECT_TRUE(upgrade.contains("cost"));
}

}  // namespace
}  // namespace windwall::scenario
