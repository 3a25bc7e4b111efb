#include "windwall/scenario/class_values.hpp"
#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/save.hpp"

#include <algorithm>

#include "described.hpp"

/// What a file says of its engine at sight, and what of it a stated value overrules.
namespace windwall::scenario {
namespace {

constexpr auto four_valves = R"({"chamber": "four_valve_pent_roof", "cooling": "liquid",
    "duty": "road", "mixture": "ported_injection", "exhaust": "muffled"})";

/// The twin of which only its sizes and its design are stated, and more where that is given.
Scenario described(std::string_view design, std::string_view upgrades = "[]",
                   std::string_view more = "{}") {
    const fields::Json words{{"design", fields::Json::parse(design)}};
    return twin_with(joined_values(words, more), upgrades);
}

TEST(Design, StandsInForWhatIsNotStated) {
    const auto made = described(four_valves);
    EXPECT_EQ(cylinder(made).valves.per_side, 2);
    EXPECT_NEAR(cylinder(made).breathing.peak_efficiency, 0.98, 1e-12);
    EXPECT_NEAR(cylinder(made).exhaust.back_pressure, 25e3, 1e-6);
    EXPECT_NEAR(cylinder(made).cooling.known_head_temperature, 423.15, 1e-9);
    EXPECT_TRUE(cylinder(made).breathing.best_speed);
}

TEST(Design, AStatedValueWins) {
    const auto made = described(four_valves, "[]", R"({"breathing": {"peak_efficiency": 0.7},
        "valves": {"per_side": 1}, "cooling": {"by": "fan"},
        "knock_anchor": {"octane_number": "85 ± 3"}})");
    EXPECT_EQ(cylinder(made).breathing.peak_efficiency, 0.7);
    EXPECT_EQ(sigma(made, "engine/breathing/peak_efficiency"), 0);
    EXPECT_EQ(cylinder(made).valves.per_side, 1);
    EXPECT_EQ(cylinder(made).cooling.by, engine::CoolingBy::fan);
    EXPECT_EQ(cylinder(made).knock_anchor.octane_number, 85);
    EXPECT_EQ(cylinder(made).knock_anchor.spread(), 3);
}

TEST(Design, SigmasAreThoseOfTheClass) {
    const auto made = described(four_valves);
    EXPECT_NEAR(sigma(made, "engine/exhaust/back_pressure"), 10e3, 1e-6);
    EXPECT_GT(sigma(made, "engine/breathing/best_speed"), 0);
    EXPECT_LT(cylinder(made).knock_anchor.spread(), 10);
    EXPECT_EQ(cylinder(made).knock_anchor.spread(),
              sigma(made, "engine/knock_anchor/octane_number"));
    const auto open = described(R"({"duty": "road"})");
    EXPECT_GT(sigma(open, "engine/exhaust/back_pressure"), 10e3);
    EXPECT_GT(sigma(open, "engine/breathing/peak_efficiency"),
              sigma(made, "engine/breathing/peak_efficiency"));
}

TEST(Design, WhereNothingIsDescribedNothingChanges) {
    const auto bare = described("{}"), unknown = described(R"({"chamber": "unknown"})");
    const engine::Cylinder usual{};
    EXPECT_EQ(cylinder(bare).breathing.peak_efficiency, usual.breathing.peak_efficiency);
    EXPECT_EQ(bits(bare.vehicle), bits(unknown.vehicle));
    EXPECT_TRUE(class_values(bare).empty());
}

TEST(Design, IsChangedBySetAndGoesBack) {
    const auto made = described(four_valves);
    const auto side = set(made, {{"engine/design/chamber", std::string("side_valve")}});
    ASSERT_TRUE(side) << side.violation();
    EXPECT_EQ(cylinder(*side.scenario).valves.per_side, 1);
    EXPECT_LT(cylinder(*side.scenario).breathing.peak_efficiency, 0.9);
    const auto back =
        set(*side.scenario, {{"engine/design/chamber", std::string("four_valve_pent_roof")}});
    EXPECT_EQ(bits(back.scenario->vehicle), bits(made.vehicle));
}

TEST(Design, ComesThroughAFile) {
    const auto made = described(four_valves);
    EXPECT_EQ(bits(loaded(save(made)).vehicle), bits(made.vehicle));
}

TEST(Design, AnUpgradeChangesAWord) {
    const auto made = described(four_valves, R"([
        {"id": "open_pipe", "title": "Open pipe", "excludes": ["silencer"],
         "set": {"engine/design/exhaust": "open"}},
        {"id": "silencer", "title": "Silencer", "set": {"engine/exhaust/back_pressure": "6 kPa",
                                                         "engine/design/exhaust": "open"}}])");
    EXPECT_NEAR(cylinder(installed(made, only(0))).exhaust.back_pressure, 2e3, 1e-6);
    EXPECT_NEAR(cylinder(installed(made, only(1))).exhaust.back_pressure, 6e3, 1e-6);
    const auto fitted = fit(made, std::vector<std::string>{"open_pipe"});
    ASSERT_TRUE(fitted) << fitted.violation();
    EXPECT_EQ(bits(fitted.scenario->vehicle), bits(installed(made, only(0))));
    EXPECT_NEAR(sigma(*fitted.scenario, "engine/exhaust/back_pressure"), 2e3, 1e-6);
}

TEST(Design, AnUpgradeThatChangesNoWordLeavesADrawAlone) {
    const auto made = described(four_valves, R"([
        {"id": "diet", "title": "Lighter", "add": {"body/mass": "-10 kg"}}])");
    std::vector<double> values;
    for (const auto& one : uncertain_numbers(made))
        values.push_back(one.value + one.sigma / 8);
    const auto drawn = with_numbers(made, values);
    const auto car = installed(drawn, only(0));
    EXPECT_NEAR(cylinder(car).breathing.peak_efficiency, cylinder(drawn).breathing.peak_efficiency,
                1e-12);
    EXPECT_NEAR(*cylinder(car).breathing.best_speed, *cylinder(drawn).breathing.best_speed, 1e-9);
}

TEST(Design, TheUnitsOfTheSizesDoNotMatter) {
    const auto metric = described(four_valves);
    const auto inches = described(four_valves, "[]", R"({"bore": "2.9921259842519685 in",
                                                         "stroke": "2.7086614173228347 in"})");
    EXPECT_NEAR(*cylinder(inches).breathing.best_speed / *cylinder(metric).breathing.best_speed, 1,
                1e-12);
}

TEST(Design, SaysWhatEachValueIsFromAndWhatAWordWouldTell) {
    const auto values = class_values(described(R"({"duty": "road", "exhaust": "open"})"));
    const auto filling =
        std::ranges::find(values, "engine/breathing/peak_efficiency", &ClassValue::address);
    ASSERT_NE(filling, values.end());
    EXPECT_FALSE(filling->stated);
    EXPECT_EQ(filling->words, std::vector<std::string>{"road"});
    ASSERT_EQ(filling->narrowed.size(), 2u);
    EXPECT_EQ(filling->narrowed[0].first, "chamber");
    EXPECT_LT(filling->narrowed[0].second, 0.8 * filling->sigma);
    const auto pipe =
        std::ranges::find(values, "engine/exhaust/back_pressure", &ClassValue::address);
    EXPECT_EQ(pipe->words, (std::vector<std::string>{"road", "open"}));
}

}  // namespace
}  // namespace windwall::scenario
