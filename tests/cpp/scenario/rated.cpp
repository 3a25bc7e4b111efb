#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/save.hpp"

#include <cmath>

#include "described.hpp"

/// Rated figures in a file: what they settle, and what becomes of it once something changes.
namespace windwall::scenario {
namespace {

constexpr auto figures = R"({"torque": "44 N m", "torque_speed": "2500 rpm",
    "power": "15 kW", "power_speed": "4000 rpm", "compression_ratio": 8.5,
    "research_octane": 91, "motor_octane": 83})";

/// The twin with these figures and nothing else but its sizes and its design.
Scenario rated(std::string_view figures_of_it = figures, std::string_view upgrades = "[]",
               std::string_view more = "{}") {
    auto known = fields::Json::parse(R"({"design": {"chamber": "two_valve_wedge",
        "cooling": "air", "duty": "work", "mixture": "carburettor", "exhaust": "muffled"}})");
    if (!figures_of_it.empty()) known["rated"] = fields::Json::parse(figures_of_it);
    return twin_with(joined_values(known, more), upgrades);
}

Scenario changed(const Scenario& scenario, const std::string& address, const Given& value) {
    auto made = set(scenario, {{address, value}});
    EXPECT_TRUE(made) << made.violation();
    return made ? *std::move(made.scenario) : Scenario{};
}

TEST(Rated, FiguresAreMetByWhatIsNotStated) {
    const auto plain = rated(""), made = rated();
    ASSERT_TRUE(made.rated);
    for (const auto& figure : made.rated->fit.figures)
        EXPECT_LT(std::abs(figure.met - figure.rated), 0.6 * figure.sigma) << figure.key;
    EXPECT_NE(cylinder(made).breathing.peak_efficiency, cylinder(plain).breathing.peak_efficiency);
    EXPECT_LT(sigma(made, "engine/breathing/peak_efficiency"),
              sigma(plain, "engine/breathing/peak_efficiency"));
    EXPECT_FALSE(plain.rated);
}

TEST(Rated, WhatIsStatedIsNotMoved) {
    const auto made = rated(figures, "[]", R"({"breathing": {"peak_efficiency": "0.7 ± 0.05"},
                                               "knock_anchor": {"octane_number": "85 ± 3"}})");
    EXPECT_EQ(cylinder(made).breathing.peak_efficiency, 0.7);
    EXPECT_EQ(cylinder(made).knock_anchor.octane_number, 85);
    EXPECT_EQ(cylinder(made).knock_anchor.compression_ratio, 8);
    EXPECT_FALSE(made.rated->anchored);
}

TEST(Rated, TheFuelAnchorsKnockAtTheStockEngine) {
    const auto made = rated();
    const auto& anchor = cylinder(made).knock_anchor;
    EXPECT_EQ(anchor.compression_ratio, 8.5);
    EXPECT_NEAR(anchor.octane_number, 91 - 0.5 * 8 - 3, 1e-9);
    EXPECT_EQ(anchor.spread(), 5);
    EXPECT_EQ(sigma(made, "engine/knock_anchor/octane_number"), 5);
}

TEST(Rated, AChangedEngineKeepsWhatTheStockOneTold) {
    const auto stock = rated();
    const auto raised = changed(stock, "engine/exhaust/back_pressure", 3e3);
    EXPECT_EQ(cylinder(raised).breathing.peak_efficiency,
              cylinder(stock).breathing.peak_efficiency);
    EXPECT_EQ(cylinder(raised).knock_anchor.octane_number,
              cylinder(stock).knock_anchor.octane_number);
    EXPECT_FALSE(cylinder(raised).rated);
    EXPECT_EQ(bits(loaded(save(raised)).vehicle), bits(raised.vehicle));
    EXPECT_NEAR(sigma(raised, "engine/breathing/peak_efficiency"),
                sigma(stock, "engine/breathing/peak_efficiency"), 1e-9);
}

TEST(Rated, WhatWasFoundIsNotSavedAsIfItWereStated) {
    const auto stock = rated();
    const auto again = loaded(save(stock));
    for (const auto* derived : {"peak_efficiency", "knock_anchor", "intake_closing"})
        EXPECT_EQ(save(stock).find(derived), std::string::npos) << derived;
    EXPECT_EQ(bits(again.vehicle), bits(stock.vehicle));
    for (const auto* address : {"engine/breathing/peak_efficiency", "engine/valves/intake_ratio",
                                "engine/knock_anchor/octane_number"})
        EXPECT_EQ(sigma(again, address), sigma(stock, address)) << address;
}

TEST(Rated, AnotherRatingIsMetAnew) {
    const auto stock = rated();
    const auto stronger = changed(stock, "engine/rated/torque", 48.0);
    EXPECT_GT(cylinder(stronger).breathing.peak_efficiency,
              cylinder(stock).breathing.peak_efficiency);
    EXPECT_EQ(bits(changed(stronger, "engine/rated/torque", 44.0).vehicle), bits(stock.vehicle));
}

TEST(Rated, WhatIsNoEngineLeavesItAlone) {
    const auto stock = rated();
    const auto lighter = changed(stock, "body/mass", 300.0);
    EXPECT_TRUE(lighter.rated);
    EXPECT_EQ(cylinder(lighter).breathing.peak_efficiency,
              cylinder(stock).breathing.peak_efficiency);
}

TEST(Rated, AnUpgradeIsFittedToTheEngineThatWasFound) {
    const auto stock = rated(figures, R"([{"id": "pipe", "title": "Open pipe",
        "set": {"engine/exhaust/back_pressure": "3 kPa", "engine/compression_ratio": 9.5}}])");
    const auto fitted = fit(stock, std::vector<std::string>{"pipe"});
    ASSERT_TRUE(fitted) << fitted.violation();
    auto with_record = installed(stock, only(0));
    with_record.engine.as<engine::Cylinder>()->rated.reset();
    EXPECT_EQ(bits(fitted.scenario->vehicle), bits(with_record));
    EXPECT_EQ(cylinder(*fitted.scenario).breathing.peak_efficiency,
              cylinder(stock).breathing.peak_efficiency);
    EXPECT_EQ(bits(loaded(save(*fitted.scenario)).vehicle), bits(fitted.scenario->vehicle));
}

TEST(Rated, HalfAFigureIsAProblem) {
    auto root = car("[]");
    root["engine"]["rated"] =
        fields::Json::parse(R"({"torque": "44 N m", "compression_ratio": 8})");
    EXPECT_NE(problems_of(root.dump()).find("stated together"), std::string::npos);
    root["engine"]["rated"] = fields::Json::parse(R"({"compression_ratio": 8})");
    EXPECT_NE(problems_of(root.dump()).find("octane number of a fuel"), std::string::npos);
}

}  // namespace
}  // namespace windwall::scenario
