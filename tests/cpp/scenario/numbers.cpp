#include "windwall/scenario/numbers.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "files.hpp"

/// The numbers of a scenario that are not known exactly.
namespace windwall::scenario {
namespace {

Scenario airfield() { return loaded(read_file("airfield_cyclecar.json")); }

const Uncertain* find(const std::vector<Uncertain>& all, std::string_view address) {
    const auto found = std::ranges::find(all, address, &Uncertain::address);
    return found == all.end() ? nullptr : &*found;
}

TEST(Numbers, StatedOnesDefaultsAndThoseOfUpgradesAreThere) {
    const auto all = uncertain_numbers(airfield());
    const auto* mass = find(all, "body/mass");
    ASSERT_NE(mass, nullptr);
    EXPECT_EQ(mass->value, 348);
    EXPECT_EQ(mass->sigma, 5);
    EXPECT_EQ(mass->low, 20);
    EXPECT_EQ(mass->high, 5000);
    EXPECT_EQ(find(all, "engine/friction/base")->sigma, 15e3);  // a default
    EXPECT_EQ(find(all, "upgrades/cooler/insert/1/part/conductance")->sigma, 10);
    EXPECT_GT(find(all, "upgrades/cooler/insert/1/part/hot_side_share")->sigma, 0);
    EXPECT_EQ(find(all, "upgrades/large_blower/replace/blower/leak_area")->value, 14e-6);
    EXPECT_EQ(find(all, "upgrades/shroud/set/engine/head_temperature")->sigma, 10);
    EXPECT_EQ(find(all, "upgrades/fairing/scale/body/drag_area")->sigma, 0.03);
    EXPECT_TRUE(std::isinf(find(all, "upgrades/diet/add/body/mass")->low));
}

TEST(Numbers, WhatIsStatedWithoutASigmaIsExact) {
    const auto all = uncertain_numbers(airfield());
    for (const auto* exact : {"engine/bore", "charge_path/blower/drive_ratio",
                              "upgrades/small_pulley/set/charge_path/blower/drive_ratio",
                              "upgrades/cooler/insert/1/part/face_area"})
        EXPECT_EQ(find(all, exact), nullptr) << exact;
}

TEST(Numbers, EachIsNamedOnce) {
    const auto all = uncertain_numbers(airfield());
    std::set<std::string> names;
    for (const auto& number : all)
        names.insert(number.address);
    EXPECT_EQ(names.size(), all.size());
    EXPECT_GT(all.size(), 60u);
}

TEST(Numbers, DrawnOnesComeThroughEveryVerb) {
    const auto car = airfield();
    const auto all = uncertain_numbers(car);
    std::vector<double> values;
    for (const auto& number : all)
        values.push_back(number.value + number.sigma / 8);
    const auto drawn = with_numbers(car, values);
    EXPECT_EQ(drawn.vehicle.body.mass, 348 + 5.0 / 8);
    const auto made = installed(drawn, 0b1000001);  // cooler and fairing
    EXPECT_DOUBLE_EQ(made.body.mass, 348 + 5 + 6 + (5 + 1 + 1) / 8.0);
    EXPECT_DOUBLE_EQ(made.body.drag_area,
                     (0.7 + 0.05 / 8) * (1.01 + 0.005 / 8) * (0.88 + 0.03 / 8));
    EXPECT_DOUBLE_EQ(made.charge_path[3].part.as<charge::ChargeCooler>()->conductance,
                     60 + 10.0 / 8);
}

TEST(Numbers, TheirOwnValuesChangeNothing) {
    const auto car = airfield();
    std::vector<double> values;
    for (const auto& number : uncertain_numbers(car))
        values.push_back(number.value);
    const auto same = with_numbers(car, values);
    for (UpgradeSet set = 0; set < 4096; set += 61) {
        const auto one = install(car, set), other = install(same, set);
        ASSERT_EQ(one.index(), other.index());
        if (one.index() != 0) continue;
        EXPECT_EQ(bits(std::get<0>(one)), bits(std::get<0>(other)));
    }
    EXPECT_THROW(with_numbers(car, std::vector{1.0}), std::logic_error);
}

}  // namespace
}  // namespace windwall::scenario
