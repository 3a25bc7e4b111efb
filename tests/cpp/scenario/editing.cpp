#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/save.hpp"

#include <cmath>

#include "files.hpp"

/// Scenarios made of others: asked, changed, and with upgrades fitted.
namespace windwall::scenario {
namespace {

Scenario airfield() { return loaded(read_file("airfield_cyclecar.json")); }

template <class T>
T got(const Scenario& scenario, std::string_view address) {
    const auto answer = get(scenario, address);
    EXPECT_TRUE(answer) << answer.violation;
    return std::get<T>(*answer);
}

Scenario changed(const Scenario& scenario, const Changes& changes) {
    auto made = set(scenario, changes);
    EXPECT_TRUE(made) << made.violation();
    return made ? *std::move(made.scenario) : Scenario{};
}

Scenario fitted(const Scenario& scenario, const std::vector<std::string>& ids,
                const Choices& chosen = {}) {
    auto made = fit(scenario, ids, chosen);
    EXPECT_TRUE(made) << made.violation();
    return made ? *std::move(made.scenario) : Scenario{};
}

TEST(Editing, GetAnswersInSi) {
    const auto car = airfield();
    EXPECT_EQ(got<double>(car, "body/mass"), 348);
    EXPECT_EQ(got<double>(car, "day/temperature"), 306.15);
    EXPECT_EQ(got<double>(car, "driveline/gearbox/ratios/2"), 2);
    EXPECT_EQ(got<std::vector<double>>(car, "driveline/gearbox/ratios"),
              (std::vector{3.2, 2.0, 1.45, 1.1}));
    EXPECT_EQ(got<std::string>(car, "engine/spark/policy"), "hold_margin");
    EXPECT_EQ(got<std::string>(car, "tyres/size"), "135/80 R13 70T");
    EXPECT_TRUE(got<bool>(car, "engine/combustion/trims_for_injected_fuel"));
    EXPECT_NO_THROW(got<std::monostate>(car, "day/altitude"));
    EXPECT_NO_THROW(got<std::monostate>(car, "engine/injector/count"));
}

TEST(Editing, GetRefusesWhatIsNoInput) {
    const auto car = airfield();
    EXPECT_EQ(get(car, "manifold/boost").violation,
              "\"manifold/boost\" is a result, not an input: it follows from the others");
    EXPECT_EQ(get(car, "body/mas").violation,
              "\"body/mas\" is no number of this vehicle; did you mean \"body/mass\"?");
    EXPECT_EQ(
        get(car, "charge_path/blower").violation,
        "\"charge_path/blower\" is no number of this vehicle: it is a part or a list; name one "
        "of its numbers");
    for (const auto* address :
         {"", "/", "body", "body/", "body//mass", "body/mass/1", "driveline/gearbox/ratios/0",
          "driveline/gearbox/ratios/01", "driveline/gearbox/ratios/5", "charge_path//drop"})
        EXPECT_FALSE(get(car, address)) << address;
}

TEST(Editing, SetTakesTextsAndSiAndLeavesTheFirstScenarioAlone) {
    const auto car = airfield();
    const auto before = save(car);
    const auto made = changed(car, {{"charge_path/blower/drive_ratio", 1.6},
                                    {"body/mass", "330 ± 2 kg"},
                                    {"body/drag_area", 0.5},
                                    {"day/relative_humidity", 0.4},
                                    {"tyres/size", "120/70-17"},
                                    {"driveline/gearbox/ratios", std::vector{3.0, 2.0, 1.0}},
                                    {"charge_path/blower/rated_speed", std::monostate{}},
                                    {"day/headwind", "3 m/s"}});
    EXPECT_EQ(save(car), before);
    EXPECT_EQ(made.vehicle.body.mass, 330);
    EXPECT_EQ(made.notes.find("body/mass")->sigma, 2);
    EXPECT_FALSE(made.notes.find("body/drag_area")->sigma);
    EXPECT_EQ(made.notes.find("day/relative_humidity")->text, "40 %");
    const auto again = loaded(save(made));
    EXPECT_EQ(bits(made.vehicle), bits(again.vehicle));
    EXPECT_EQ(physics(made), physics(again));
    EXPECT_EQ(made.menu.size(), car.menu.size());
}

TEST(Editing, SetRefusesWithAllProblems) {
    const auto read = set(airfield(), {{"body/mass", 5000000.0},
                                       {"engine/rev_limit", 4200.0},
                                       {"knock/margin", 3.0},
                                       {"body/drag_area", "0.5 m"},
                                       {"tyres/size", 3.0},
                                       {"engine/spark/policy", "held"}});
    EXPECT_FALSE(read);
    EXPECT_EQ(
        read.violation(),
        "set body/mass: 5000000 kg is outside 20 to 5000 kg; write for example \"320 kg\"\n"
        "set engine/rev_limit: 4200 rad/s is about 40107 rpm and outside 1000 to 20000 rpm; "
        "write for example \"4200 rpm\"\n"
        "set knock/margin: \"knock/margin\" is a result, not an input: it follows from the "
        "others\n"
        "set body/drag_area: \"0.5 m\": m is the unit of a length, and an area is expected (mm2, "
        "cm2, m2, in2, ft2); write for example \"0.5 m2\"\n"
        "set tyres/size: a text is expected, found a number\n"
        "set engine/spark/policy: \"held\" is not known here; it is one of hold_margin or "
        "as_given\n");
}

TEST(Editing, SetKeepsRulesAndUpgrades) {
    EXPECT_EQ(set(airfield(),
                  {{"charge_path/throttle/shaft", "19 mm"}, {"charge_path/throttle/bore", "18 mm"}})
                  .violation(),
              "set charge_path/throttle/shaft: the shaft is as thick as the bore; nothing could "
              "flow\n");
    EXPECT_EQ(
        set(airfield(), {{"body/drag_area", "4.99 m2"}}).violation(),
        "set upgrades/cooler: \"cooler\": body/drag_area would be 5.040 m2, outside 0.01 to 5 "
        "m2\n"
        "set upgrades/cooler_duct: \"cooler\": body/drag_area would be 5.040 m2, outside 0.01 to "
        "5 m2\n");
}

TEST(Editing, FittingCarriesPartsValuesAndNotes) {
    const auto car = airfield();
    const auto made = fitted(car, {"cooler_duct", "cooler", "fairing"});
    EXPECT_EQ(bits(made.vehicle), bits_once_fitted(installed(car, 0b1000011)));
    EXPECT_EQ(made.notes.find("charge_path/cooler/conductance")->sigma, 10);
    EXPECT_EQ(made.notes.find("charge_path/cooler/installed_share")->text, "0.55 ± 0.1");
    const auto& mass = *made.notes.find("body/mass");
    EXPECT_EQ(mass.value, made.vehicle.body.mass);
    EXPECT_DOUBLE_EQ(*mass.sigma, std::sqrt(25.0 + 1 + 1));
    const auto& drag = *made.notes.find("body/drag_area");
    EXPECT_EQ(drag.value, made.vehicle.body.drag_area);
    const double relative =
        std::sqrt(std::pow(0.05 / 0.7, 2) + std::pow(0.005 / 1.01, 2) + std::pow(0.03 / 0.88, 2));
    EXPECT_NEAR(*drag.sigma / drag.value, relative, 1e-12);
    EXPECT_TRUE(made.observed.empty());
}

TEST(Editing, WhatIsFittedCanBeSavedAndReadAgain) {
    const auto car = airfield();
    for (UpgradeSet set = 0; set < only(car.menu.size()); ++set) {
        if (set % 97 != 0 || install(car, set).index() != 0) continue;
        std::vector<std::string> ids;
        for (std::size_t at = 0; at < car.menu.size(); ++at)
            if (holds(set, at)) ids.push_back(car.menu[at].id);
        const auto made = fitted(car, ids);
        const auto again = loaded(save(made));
        EXPECT_EQ(bits(made.vehicle), bits(again.vehicle));
        EXPECT_EQ(physics(made), physics(again));
        EXPECT_EQ(save(again), save(made));
        EXPECT_EQ(bits_once_fitted(made.vehicle), bits_once_fitted(installed(car, set)));
    }
}

TEST(Editing, TheMenuKeepsWhatIsStillPossible) {
    const auto car = airfield();
    const auto ids = [](const Scenario& scenario) {
        std::vector<std::string> all;
        for (const auto& upgrade : scenario.menu)
            all.push_back(upgrade.id);
        return all;
    };
    const auto made = fitted(car, {"cooler", "small_pulley"});
    // The larger blower is barred; what requires the cooler no longer has to say so.
    EXPECT_EQ(ids(made),
              (std::vector<std::string>{"cooler_duct", "throttle_38", "gearing", "fairing", "diet",
                                        "race_fuel", "exhaust", "hard_tyres", "shroud", "bypass",
                                        "rear_throttle"}));
    EXPECT_EQ(made.menu[0].required, 0u);
    const std::string text = save(made);
    EXPECT_EQ(text.find("requires"), text.rfind("requires"));  // the rear throttle's bypass alone
    EXPECT_EQ(bits(installed(made, only(0))), bits_once_fitted(installed(car, 0b0111)));
}

TEST(Editing, UpgradesThatNoLongerMakeAVehicleLeaveTheMenu) {
    const auto car = loaded_car(R"([
        {"id": "half", "scale": {"body/mass": 0.2}},
        {"id": "half_again", "scale": {"body/mass": 0.2}},
        {"id": "after_that", "requires": ["half_again"]},
        {"id": "no_blower", "remove": ["blower"]}])");
    EXPECT_TRUE(fitted(car, {"half"}).menu.size() == 1);
    // And so do limits on parts that are gone.
    EXPECT_EQ(fitted(car, {"no_blower"}).limits.size(), 1u);
    EXPECT_TRUE(load(save(fitted(car, {"no_blower"}))));
}

TEST(Editing, AChoiceIsFittedAsItWasPicked) {
    const auto car = airfield();
    EXPECT_EQ(got<double>(fitted(car, {"gearing"}, {3}), "driveline/final_chain/teeth_rear"), 29);
    EXPECT_EQ(got<double>(fitted(car, {"gearing"}), "driveline/final_chain/teeth_rear"), 26);
}

TEST(Editing, FittingTheImpossibleIsRefused) {
    const auto car = airfield();
    const auto refusal = [&](const std::vector<std::string>& ids) {
        return fit(car, ids).violation();
    };
    EXPECT_EQ(refusal({"cooler_duct"}), "install: \"cooler_duct\" requires \"cooler\"\n");
    EXPECT_EQ(refusal({"large_blower", "small_pulley"}),
              "install: \"small_pulley\" and \"large_blower\" exclude each other\n");
    EXPECT_EQ(refusal({"rocket"}), "install: there is no upgrade \"rocket\"\n");
    EXPECT_EQ(save(fitted(car, {})), save(car));
}

TEST(Editing, ADefaultThatIsScaledStaysAsUncertainAsItWas) {
    const auto car = loaded_car(R"([{"id": "a", "scale": {"engine/friction/base": 0.5}},
                                    {"id": "b", "add": {"engine/lambda": "0.02 ± 0.01"}}])");
    const auto made = fitted(car, {"a", "b"});
    const auto& base = *made.notes.find("engine/friction/base");
    EXPECT_EQ(base.value, 30e3);
    EXPECT_EQ(*base.sigma, 7.5e3);
    EXPECT_DOUBLE_EQ(*made.notes.find("engine/lambda")->sigma, std::hypot(0.04, 0.01));
}

}  // namespace
}  // namespace windwall::scenario
