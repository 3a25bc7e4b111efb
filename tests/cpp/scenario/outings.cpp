#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/save.hpp"

#include <algorithm>

#include "files.hpp"

/// Outings of a file: what is read, what is refused and where, and what is kept.
namespace windwall::scenario {
namespace {

constexpr const char* two_runs = R"([{"id": "two_runs", "title": "Twice", "starts": "cold",
    "shift_speed": "4800 ± 50 rpm", "lift": false, "launch_gear": 2, "road_length": "1 mi",
    "fuel_on_board": "5 L", "road": {"columns": {"distance": "m", "headwind": "km/h", "grade": "%"},
                                     "rows": [[0, 0, 1], [800, 9, -1]]},
    "legs": [{"kind": "idle", "time": "5 min"},
             {"kind": "full_throttle", "for_distance": "1600 m"},
             {"kind": "stop", "time": "10 min", "engine": "off", "hood": "open"},
             {"kind": "launch"},
             {"kind": "full_throttle", "to_speed": "100 km/h"}]}])";

std::string with_outings(const std::string& outings) { return R"({"outings": )" + outings + "}"; }

Scenario read_with(const std::string& outings) { return loaded_car("[]", with_outings(outings)); }

std::string problems_with(const std::string& outings) {
    return problems_of_car("[]", with_outings(outings));
}

std::string problems_of_legs(const std::string& legs) {
    return problems_with(R"([{"id": "day_1", "legs": )" + legs + "}]");
}

TEST(Outings, AreReadLegByLeg) {
    const auto car = read_with(two_runs);
    ASSERT_EQ(car.outings.size(), 1u);
    const auto& outing = car.outings[0];
    EXPECT_EQ(outing.id, "two_runs");
    EXPECT_EQ(outing.starts, vehicle::Starts::cold);
    EXPECT_FALSE(outing.lift);
    EXPECT_EQ(outing.launch_gear, 2);
    EXPECT_NEAR(outing.road_length.value(), 1609.344, 1e-9);
    EXPECT_NEAR(outing.fuel_on_board.value(), 0.005, 1e-15);
    ASSERT_EQ(outing.road.column.size(), 3u);  // in the order of the rows, whatever the file's
    EXPECT_NEAR(outing.road.column[1][1], -0.01, 1e-15);
    EXPECT_NEAR(outing.road.column[2][1], 2.5, 1e-12);
    ASSERT_EQ(outing.legs.size(), 5u);
    EXPECT_EQ(outing.legs[0].as<vehicle::Idle>()->time, 300);
    EXPECT_EQ(outing.legs[1].as<vehicle::FullThrottle>()->for_distance, 1600);
    EXPECT_EQ(outing.legs[2].as<vehicle::Stop>()->engine, vehicle::StandingEngine::off);
    EXPECT_EQ(outing.legs[2].as<vehicle::Stop>()->hood, vehicle::Hood::open);
    EXPECT_TRUE(outing.legs[3].as<vehicle::Launch>());
    EXPECT_NEAR(outing.legs[4].as<vehicle::FullThrottle>()->to_speed.value(), 100 / 3.6, 1e-12);
    ASSERT_TRUE(car.notes.find("outings/two_runs/legs/1/time"));
    EXPECT_EQ(car.notes.find("outings/two_runs/legs/1/time")->text, "5 min");
}

TEST(Outings, MistakesAreAllToldAtOnceWhereTheyStand) {
    EXPECT_EQ(
        problems_with(R"([{"id": "day_1", "startz": "cold", "legs": [
            {"kind": "idle", "time": "5 min"},
            {"kind": "full_throttle", "to_sped": "100 km/h"},
            {"kind": "full_throttle", "for_time": "5 s", "to_speed": "100 km/h"},
            {"kind": "hold_speed", "speed": "900 km/h", "for_time": "5 s"},
            {"kind": "cost", "for_time": "5 s"},
            {"kind": "stop", "time": "1 kg", "engine": "of"}]}])"),
        "outings/day_1/startz: there is no \"startz\" here; did you mean \"starts\"? (How warm it "
        "sets out: cold, all as the day's air; idling, as after a long idle; soaked, as after a "
        "long pull)\n"
        "outings/day_1/legs/2/to_sped: there is no \"to_sped\" here; did you mean \"to_speed\"? "
        "(Until this speed over the ground)\n"
        "outings/day_1/legs/3/for_time: the leg ends with to_speed already: state one of the two\n"
        "outings/day_1/legs/4/speed: 900 km/h is outside 5 to 600 km/h\n"
        "outings/day_1/legs/5/kind: \"cost\" is not known here; it is one of idle, launch, "
        "full_throttle, hold_speed, coast or stop; did you mean \"coast\"?\n"
        "outings/day_1/legs/6/time: \"1 kg\": kg is the unit of a mass, and a time is expected "
        "(ms, s, min, h); write for example \"38 s\"\n"
        "outings/day_1/legs/6/engine: \"of\" is not known here; it is one of idling or off; did "
        "you mean \"off\"?\n");
}

TEST(Outings, ALegThatCannotBeginIsToldFromItsPlace) {
    EXPECT_EQ(problems_of_legs(R"([{"kind": "full_throttle", "for_time": "5 s"},
                                   {"kind": "launch"}])"),
              "outings/day_1/legs/2/kind: \"launch\" begins at a standstill, and the leg before it "
              "leaves the vehicle moving: put a \"stop\" between them\n");
}

// The car of the airfield has four gears.

TEST(Outings, LaunchInAGearThatIsThere) {
    const auto launched = [](const std::string& gear) {
        return problems_with(R"([{"id": "day_1", "launch_gear": )" + gear +
                             R"(, "legs": [{"kind": "launch"}]}])");
    };
    EXPECT_EQ(launched("4"), "");
    EXPECT_EQ(launched("5"),
              "outings/day_1/launch_gear: 5 is outside 1 to 4, the gears of this "
              "vehicle\n");
    EXPECT_EQ(launched("200"),
              "outings/day_1/launch_gear: 200 is outside the whole numbers 1 to "
              "128\n");
}

TEST(Outings, HaveLegs) {
    EXPECT_EQ(problems_of_legs("[]"), "outings/day_1/legs: at least one leg is needed\n");
    EXPECT_EQ(problems_of_legs("{}"),
              "outings/day_1/legs: a list of legs is expected here, found an object\n");
    EXPECT_EQ(problems_with(R"([{"id": "day_1"}])"),
              "outings/day_1/legs: is missing; it is the list of what is driven\n");
    EXPECT_EQ(problems_with(R"([{"id": "day_1", "leg": []}])"),
              "outings/day_1/leg: there is no \"leg\" here; did you mean \"legs\"?\n");
    std::string many = R"([{"kind": "idle", "time": "1 s"})";
    for (int more = 0; more < 64; ++more)
        many += R"(, {"kind": "idle", "time": "1 s"})";
    EXPECT_EQ(problems_of_legs(many + "]"),
              "outings/day_1/legs: at most 64 legs are allowed, found 65\n");
    EXPECT_EQ(problems_with(R"(["day_1"])"),
              "outings/1: an outing is expected here, an object; found a text\n");
}

TEST(Outings, HaveAnIdOfTheirOwn) {
    const auto named = [](const std::string& id, const std::string& upgrades = "[]") {
        return problems_of_car(upgrades, with_outings(R"([{"id": "day_1", "legs": [
            {"kind": "launch"}]}, {"id": )" + id + R"(, "legs": [{"kind": "launch"}]}])"));
    };
    EXPECT_EQ(named("\"day_2\""), "");
    EXPECT_EQ(named("\"day_1\""), "outings/2/id: \"day_1\" is the id of another outing\n");
    EXPECT_EQ(named("\"blower\""), "outings/2/id: \"blower\" is the id of a part already\n");
    EXPECT_EQ(named("\"bore\""), "outings/2/id: \"bore\" is the name of a field, and no id\n");
    EXPECT_EQ(named("\"outings\""),
              "outings/2/id: \"outings\" is the name of a field, and no id\n");
    EXPECT_EQ(named("\"diet\"", R"([{"id": "diet", "add": {"body/mass": "-2 kg"}}])"),
              "outings/2/id: \"diet\" is the id of an upgrade\n");
    EXPECT_EQ(problems_with(R"([{"legs": [{"kind": "launch"}]}])"),
              "outings/1/id: is missing; every outing has an id of its own\n");
}

TEST(Outings, AreSavedAsTyped) {
    const auto once = save(read_with(two_runs));
    EXPECT_EQ(save(loaded(once)), once);
    for (const auto* kept : {"4800 ± 50 rpm", "1 mi", "5 min", "km/h"})
        EXPECT_NE(once.find(kept), std::string::npos) << kept;
}

TEST(Outings, AreLeftAsTheyAreByUpgrades) {
    const auto car =
        loaded_car(R"([{"id": "diet", "add": {"body/mass": "-2 kg"}}])", with_outings(two_runs));
    const auto fitted = fit(car, std::vector<std::string>{"diet"});
    ASSERT_TRUE(fitted) << fitted.violation();
    EXPECT_EQ(fitted.scenario->outings.size(), 1u);
}

TEST(Outings, ArePhysicsButForWhatTheyAreCalled) {
    const auto whole = car("[]", with_outings(two_runs));
    const auto before = physics(loaded(whole.dump()));
    EXPECT_FALSE(physics(loaded_car("[]", R"({"outings": []})")).contains("outings"));
    const auto changed = [&](const char* pointer, fields::Json value) {
        auto root = whole;
        root[fields::Json::json_pointer(pointer)] = std::move(value);
        return physics(loaded(root.dump()));
    };
    for (const auto& [pointer, value] : std::vector<std::pair<const char*, fields::Json>>{
             {"/outings/0/starts", "soaked"},
             {"/outings/0/lift", true},
             {"/outings/0/shift_speed", "4800 ± 60 rpm"},
             {"/outings/0/road/rows/1/1", 10},
             {"/outings/0/legs/0/time", "4 min"},
             {"/outings/0/legs/2/engine", "idling"},
             {"/outings/0/legs/3", {{"kind", "idle"}, {"time", "1 s"}}}})
        EXPECT_NE(changed(pointer, value), before) << pointer;
    for (const auto& [pointer, value] :
         std::vector<std::pair<const char*, fields::Json>>{{"/outings/0/title", "Another"},
                                                           {"/outings/0/id", "another"},
                                                           {"/outings/0/legs/0/time", "300 s"}})
        EXPECT_EQ(changed(pointer, value), before) << pointer;
}

}  // namespace
}  // namespace windwall::scenario
