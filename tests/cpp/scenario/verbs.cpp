#include <numbers>

#include "files.hpp"

/// Each verb of an upgrade, and the order in which they act.
namespace windwall::scenario {
namespace {

using Ids = std::vector<std::string>;

const charge::PositiveBlower& blower_of(const vehicle::Vehicle& vehicle) {
    for (const auto& entry : vehicle.charge_path)
        if (const auto* blower = entry.part.as<charge::PositiveBlower>()) return *blower;
    throw std::logic_error("no blower");
}

TEST(Verbs, ReplacePutsAPartInTheSamePlace) {
    const auto car = loaded_car(R"([{"id": "a", "replace": {"blower": {"id": "blower",
        "kind": "positive_blower", "displacement": "400 cm3", "drive_ratio": 1}}}])");
    const auto made = installed(car, only(0));
    EXPECT_EQ(ids_of(made.charge_path), (Ids{"filter", "throttle", "blower", "plenum"}));
    EXPECT_DOUBLE_EQ(blower_of(made).displacement, 400e-6);
    EXPECT_DOUBLE_EQ(blower_of(made).leak_area, 8e-6);  // of the new part: its default
    EXPECT_FALSE(blower_of(made).rated_speed);
}

TEST(Verbs, ReplaceMayBringAnotherKind) {
    const auto car = loaded_car(R"([{"id": "a", "replace": {"filter": {
        "kind": "duct", "length": "300 mm", "bore": "50 mm"}}}])");
    EXPECT_EQ(installed(car, only(0)).charge_path[0].part.kind(), "duct");
}

TEST(Verbs, RemoveTakesPartsOfBothLists) {
    const auto car = loaded_car(R"([{"id": "a", "remove": ["filter", "clutch"]}])");
    const auto made = installed(car, only(0));
    EXPECT_EQ(ids_of(made.charge_path), (Ids{"throttle", "blower", "plenum"}));
    EXPECT_EQ(made.driveline.size(), car.vehicle.driveline.size() - 1);
}

TEST(Verbs, InsertGoesNextToTheFirstAnchorThatIsThere) {
    const auto car = loaded_car(R"([
        {"id": "hose", "insert": [
            {"after": ["no_such_part", "filter"],
             "part": {"id": "hose_1", "kind": "duct", "length": "300 mm", "bore": "50 mm"}},
            {"before": ["plenum"],
             "part": {"id": "hose_2", "kind": "duct", "length": "300 mm", "bore": "50 mm"}},
            {"after": ["gearbox"],
             "part": {"id": "bevel", "kind": "final_drive", "ratio": 1.1}}]}])");
    const auto made = installed(car, only(0));
    EXPECT_EQ(ids_of(made.charge_path),
              (Ids{"filter", "hose_1", "throttle", "blower", "hose_2", "plenum"}));
    EXPECT_EQ(made.driveline[3].id, "bevel");
}

TEST(Verbs, InsertedPartsCanBeAnchorsOfLaterOnes) {
    const auto car = loaded_car(R"([
        {"id": "a", "insert": [{"after": ["blower"],
            "part": {"id": "hose_1", "kind": "duct", "length": "300 mm", "bore": "50 mm"}}]},
        {"id": "b", "insert": [{"after": ["hose_1", "blower"],
            "part": {"id": "hose_2", "kind": "duct", "length": "200 mm", "bore": "50 mm"}}]}])");
    EXPECT_EQ(ids_of(installed(car, 0b11).charge_path),
              (Ids{"filter", "throttle", "blower", "hose_1", "hose_2", "plenum"}));
    EXPECT_EQ(ids_of(installed(car, 0b10).charge_path),
              (Ids{"filter", "throttle", "blower", "hose_2", "plenum"}));
}

TEST(Verbs, SetTakesNumbersEntriesWordsTextsFlagsAndTables) {
    const auto car = loaded_car(R"([{"id": "a", "set": {
        "charge_path/blower/drive_ratio": 1.6,
        "driveline/gearbox/ratios/3": 1.5,
        "charge_path/blower/rated_outlet_temperature": "140 degC",
        "engine/spark/policy": "as_given",
        "engine/spark/table": {"columns": {"engine_speed": "rpm", "retard": "deg"},
                               "rows": [[1000, 0], [5000, 4]]},
        "engine/combustion/trims_for_injected_fuel": false,
        "engine/injector/rated_flow": "240 cm3/min",
        "tyres/size": "120/70-17",
        "charge_path/blower/rated_speed": null}}])");
    const auto made = installed(car, only(0));
    EXPECT_EQ(blower_of(made).drive_ratio, 1.6);
    EXPECT_DOUBLE_EQ(*blower_of(made).rated_outlet_temperature, 413.15);
    EXPECT_FALSE(blower_of(made).rated_speed);
    const auto& engine = *made.engine.as<engine::Cylinder>();
    EXPECT_EQ(engine.spark.policy, engine::SparkPolicy::as_given);
    EXPECT_DOUBLE_EQ(engine.spark.table.column[1][1], 4 * std::numbers::pi / 180);
    EXPECT_FALSE(engine.combustion.trims_for_injected_fuel);
    ASSERT_TRUE(engine.injector);
    EXPECT_DOUBLE_EQ(engine.injector->rated_flow, 4e-6);
    EXPECT_EQ(engine.injector->dead_time, engine::Injector{}.dead_time);
    EXPECT_EQ(made.tyres.size, "120/70-17");
    EXPECT_EQ(made.driveline[2].part.as<driveline::Gearbox>()->ratios,
              (std::vector{3.2, 2.0, 1.5, 1.1}));
}

TEST(Verbs, SetTakesWholeLists) {
    const auto car = loaded_car(R"([{"id": "a", "set": {"driveline/gearbox/ratios": [3, 2, 1]}}])");
    EXPECT_EQ(installed(car, only(0)).driveline[2].part.as<driveline::Gearbox>()->ratios,
              (std::vector{3.0, 2.0, 1.0}));
}

TEST(Verbs, ScaleMultipliesAndAddCountsDifferences) {
    const auto car = loaded_car(R"([{"id": "a",
        "scale": {"body/drag_area": "90 %", "body/mass": 0.5},
        "add": {"body/mass": "-10 lb", "day/temperature": "9 delta_degF", "day/pressure": "-14.5 mbar"}}])");
    const auto made = installed(car, only(0));
    EXPECT_DOUBLE_EQ(made.body.drag_area, 0.63);
    EXPECT_DOUBLE_EQ(made.body.mass, 174 - 4.5359237);
    EXPECT_DOUBLE_EQ(made.day.temperature, 306.15 + 5);
    EXPECT_DOUBLE_EQ(*made.day.pressure, 96950);
}

TEST(Verbs, SetComesBeforeScaleAndScaleBeforeAdd) {
    const auto car = loaded_car(R"([
        {"id": "a", "add": {"body/mass": "10 kg"}},
        {"id": "b", "scale": {"body/mass": 2}},
        {"id": "c", "set": {"body/mass": "100 kg"}}])");
    EXPECT_EQ(installed(car, 0b111).body.mass, 210);
    EXPECT_EQ(installed(car, 0b011).body.mass, 706);
}

TEST(Verbs, AnyNumberOfUpgradesMayScaleAndAdd) {
    const auto car = loaded_car(R"([
        {"id": "a", "add": {"body/mass": "4 kg"}, "scale": {"body/drag_area": 0.9}},
        {"id": "b", "add": {"body/mass": "-9 kg"}, "scale": {"body/drag_area": 0.8}}])");
    EXPECT_EQ(installed(car, 0b11).body.mass, 343);
    EXPECT_DOUBLE_EQ(installed(car, 0b11).body.drag_area, 0.7 * 0.9 * 0.8);
}

TEST(Verbs, ReplaceAndInsertComeBeforeSetWhateverTheOrderOfTheMenu) {
    const auto car = loaded_car(R"([
        {"id": "a", "set": {"charge_path/blower/drive_ratio": 1.6}},
        {"id": "b", "replace": {"blower": {"kind": "positive_blower", "displacement": "400 cm3",
                                           "drive_ratio": 1}}}])");
    EXPECT_EQ(blower_of(installed(car, 0b11)).drive_ratio, 1.6);
    EXPECT_EQ(blower_of(installed(car, 0b10)).drive_ratio, 1);
}

TEST(Verbs, ChoiceTakesTheFastestValue) {
    const auto car = loaded_car(R"([
        {"id": "gearing", "choose": {"driveline/final_chain/teeth_rear": [27, 29, 31]}},
        {"id": "mass", "choose": {"body/mass": ["300 kg", "290 kg"]}}])");
    const auto both = open_choices(car.menu, 0b11);
    ASSERT_EQ(both.size(), 2u);
    EXPECT_EQ(both[0].choice->values.size(), 3u);
    EXPECT_EQ(both[1].choice->values.size(), 2u);
    EXPECT_EQ(open_choices(car.menu, 0b10).front().upgrade, 1u);
    // A made-up speed with its best at 29 teeth and the lighter car.
    const auto speed = [](const vehicle::Vehicle& vehicle, const Choices& = {}) {
        const double teeth = vehicle.driveline.back().part.as<driveline::Chain>()->teeth_rear;
        return 100 - (teeth - 29) * (teeth - 29) - vehicle.body.mass / 100;
    };
    EXPECT_EQ(resolve_choice(car, 0b11, speed), (Choices{1, 1}));
    const auto made = installed(car, 0b11, {1, 1});
    EXPECT_EQ(made.driveline.back().part.as<driveline::Chain>()->teeth_rear, 29);
    EXPECT_EQ(made.body.mass, 290);
    EXPECT_EQ(installed(car, 0b11).body.mass, 300);  // the first unless told otherwise
    EXPECT_EQ(refused(car, 0b01, {3}), "choice 1 has only 3 values");
    EXPECT_EQ(refused(car, 0b01, {0, 0}), "these upgrades leave only 1 choices open");
    EXPECT_EQ(resolve_choice(car, 0, speed), Choices{});
}

}  // namespace
}  // namespace windwall::scenario
