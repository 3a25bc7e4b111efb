#include "windwall/scenario/edit.hpp"

#include <algorithm>
#include <numeric>
#include <random>

#include "files.hpp"

/// Sets of upgrades: who requires whom, who excludes whom, and that nothing depends on an order of
/// naming.
namespace windwall::scenario {
namespace {

// What happens to an upgrade when its menu is shuffled: which of the old numbers stands where.
std::vector<std::size_t> shuffled(std::size_t size, std::mt19937& random) {
    std::vector<std::size_t> order(size);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::shuffle(order, random);
    return order;
}

constexpr auto tied_menu = R"([
    {"id": "a", "requires": ["b"]},
    {"id": "b", "requires": ["c"]},
    {"id": "c"},
    {"id": "d", "excludes": ["c"]},
    {"id": "e"}])";

TEST(Sets, RequirementsAreClosedAndExclusionsSymmetric) {
    const auto car = loaded_car(tied_menu);
    EXPECT_EQ(car.menu[0].required, 0b00110u);
    EXPECT_EQ(car.menu[1].required, 0b00100u);
    EXPECT_EQ(car.menu[2].excluded, 0b01000u);
    EXPECT_EQ(car.menu[3].excluded, 0b00100u);
}

TEST(Sets, WhatIsNotAllowedHasAReason) {
    const auto car = loaded_car(tied_menu);
    EXPECT_EQ(refused(car, 0b00001), "\"a\" requires \"b\"");
    EXPECT_EQ(refused(car, 0b00011), "\"a\" requires \"c\"");
    EXPECT_EQ(refused(car, 0b00111), "installed");
    EXPECT_EQ(refused(car, 0b01100), "\"c\" and \"d\" exclude each other");
    EXPECT_EQ(refused(car, 0b100000), "the menu has only 5 upgrades");
}

TEST(Sets, TwoMayRequireEachOther) {
    const auto car =
        loaded_car(R"([{"id": "a", "requires": ["b"]}, {"id": "b", "requires": ["a"]}])");
    EXPECT_EQ(car.menu[0].required, 0b10u);
    EXPECT_EQ(refused(car, 0b01), "\"a\" requires \"b\"");
    EXPECT_EQ(refused(car, 0b11), "installed");
}

TEST(Sets, RelationsThatCannotHoldAreProblems) {
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "requires": ["boler"]}, {"id": "boiler"}])"),
              "upgrades/a/requires/1: there is no upgrade \"boler\"; did you mean \"boiler\"?\n");
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "excludes": ["a"]}])"),
              "upgrades/a/excludes/1: an upgrade neither needs nor bars itself\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "requires": ["b"]}, {"id": "b", "excludes": ["a"]}])"),
        "upgrades/a: it can never be fitted: \"a\" and \"b\" exclude each other\n");
}

TEST(Sets, ALargerSetThatMakesNoVehicleIsNotAllowed) {
    const auto car = loaded_car(R"([
        {"id": "a", "scale": {"body/mass": 0.2}},
        {"id": "b", "scale": {"body/mass": 0.2}},
        {"id": "narrow", "set": {"charge_path/throttle/bore": "19 mm"}},
        {"id": "thick", "set": {"charge_path/throttle/shaft": "20 mm"}},
        {"id": "pipe", "replace": {"throttle": {"kind": "duct", "length": "1 m", "bore": "30 mm"}}},
        {"id": "bare", "remove": ["filter", "blower"]},
        {"id": "pot", "remove": ["plenum", "throttle"], "excludes": ["narrow", "thick", "pipe"]}])");
    EXPECT_EQ(refused(car, 0b0000011), "\"a\": body/mass would be 13.92 kg, outside 20 to 5000 kg");
    EXPECT_EQ(refused(car, 0b0001100),
              "\"narrow\": the shaft is as thick as the bore; nothing could flow");
    EXPECT_EQ(refused(car, 0b0010100), "\"narrow\": a duct stands where a throttle was expected");
    EXPECT_EQ(refused(car, 0b1100000), "\"pot\": no part is left in the charge path");
}

TEST(Sets, TheSameInWhateverOrderTheUpgradesAreNamed) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    std::mt19937 random(20240607);
    for (int round = 0; round < 100; ++round) {
        const UpgradeSet set = random() & (only(car.menu.size()) - 1);
        const auto direct = install(car, set);
        std::vector<std::string> ids;
        for (const auto at : shuffled(car.menu.size(), random))
            if (holds(set, at)) ids.push_back(car.menu[at].id);
        EXPECT_EQ(*set_of(car.menu, ids), set);
        const auto by_name = fit(car, ids);
        ASSERT_EQ(direct.index() == 0, bool(by_name));
        if (by_name)
            EXPECT_EQ(bits_once_fitted(std::get<0>(direct)),
                      bits_once_fitted(by_name.scenario->vehicle));
        else
            EXPECT_EQ("install: " + std::get<1>(direct) + "\n", by_name.violation());
    }
}

// Only `insert` lets the order of the menu show, and `scale` its rounding.
TEST(Sets, TheSameHoweverTheMenuIsOrderedUpToRounding) {
    auto root = fields::Json::parse(read_file("airfield_cyclecar.json"));
    const auto car = loaded(root.dump());
    std::mt19937 random(77);
    for (int round = 0; round < 40; ++round) {
        const auto order = shuffled(car.menu.size(), random);
        auto menu = fields::Json::array();
        for (const auto at : order)
            menu.push_back(root["upgrades"][at]);
        auto other_root = root;
        other_root["upgrades"] = menu;
        const auto other = loaded(other_root.dump());
        const UpgradeSet set = random() & (only(car.menu.size()) - 1);
        UpgradeSet moved = 0;
        for (std::size_t to = 0; to < order.size(); ++to)
            if (holds(set, order[to])) moved |= only(to);
        const auto one = install(car, set), two = install(other, moved);
        ASSERT_EQ(one.index(), two.index());
        if (one.index() != 0) continue;
        const auto &a = std::get<0>(one), &b = std::get<0>(two);
        EXPECT_EQ(ids_of(a.charge_path), ids_of(b.charge_path));
        EXPECT_NEAR(a.body.drag_area, b.body.drag_area, 1e-15);
        EXPECT_NEAR(a.body.mass, b.body.mass, 1e-12);
    }
}

TEST(Sets, SixtyFourUpgradesFitAndNotOneMore) {
    auto menu = fields::Json::array();
    for (int at = 0; at < 64; ++at)
        menu.push_back({{"id", "u" + std::to_string(at)}, {"add", {{"body/mass", "1 kg"}}}});
    const auto car = loaded_car(menu.dump());
    EXPECT_EQ(installed(car, ~UpgradeSet{0}).body.mass, 348 + 64);
    menu.push_back({{"id", "last"}});
    EXPECT_EQ(problems_of_car(menu.dump()),
              "upgrades: at most 64 upgrades are allowed, found 65\n");
}

}  // namespace
}  // namespace windwall::scenario
