#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/schema.hpp"

#include "files.hpp"

/// Things that are counted: there is no half of a tooth, however it is stated.
namespace windwall::scenario {
namespace {

constexpr auto teeth = "driveline/final_chain/teeth_rear";

TEST(WholeNumbers, AFileStatesNoHalf) {
    auto root = car("[]");
    for (auto& part : root["driveline"])
        if (part["id"] == "final_chain") part["teeth_rear"] = 26.5;
    EXPECT_EQ(problems_of(root.dump()),
              "driveline/final_chain/teeth_rear: 26.5 is outside the whole numbers 6 to 200\n");
}

TEST(WholeNumbers, NorDoesAnUpgradeMakeOne) {
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "set": {"driveline/final_chain/teeth_rear": 26.5}}])"),
        "upgrades/a/set/driveline/final_chain/teeth_rear: 26.5 is outside the whole numbers 6 "
        "to 200\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "add": {"driveline/final_chain/teeth_rear": 0.5}}])"),
        "upgrades/a/add/driveline/final_chain/teeth_rear: driveline/final_chain/teeth_rear would "
        "be 30.50, outside the whole numbers 6 to 200\n");
}

TEST(WholeNumbers, NorIsOneSet) {
    const auto scenario = loaded(read_file("airfield_cyclecar.json"));
    EXPECT_TRUE(set(scenario, {{teeth, 27.0}}));
    EXPECT_TRUE(set(scenario, {{teeth, "27"}}));
    EXPECT_NE(set(scenario, {{teeth, 27.5}}).violation().find("whole numbers"), std::string::npos);
    EXPECT_NE(set(scenario, {{teeth, "27.5"}}).violation().find("whole numbers"),
              std::string::npos);
}

TEST(WholeNumbers, TheSchemaAsksForAnInteger) {
    const auto whole = schema();
    EXPECT_EQ(whole["$defs"]["whole_number"]["type"], fields::Json({"string", "integer"}));
    EXPECT_NE(whole.dump().find(R"("teeth_rear":{"$ref":"#/$defs/whole_number")"),
              std::string::npos);
}

}  // namespace
}  // namespace windwall::scenario
