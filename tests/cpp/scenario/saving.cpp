#include "windwall/scenario/save.hpp"

#include <algorithm>

#include "files.hpp"

/// A saved file says the same, in the same words; and what means the same has the same physics.
namespace windwall::scenario {
namespace {

// Every address of two scenarios is known alike: as typed, in SI, with its sigma.
void expect_same_notes(const fields::Provenance& one, const fields::Provenance& other) {
    auto at = other.begin();
    for (const auto& [address, note] : one) {
        ASSERT_NE(at, other.end()) << address;
        EXPECT_EQ(address, at->first);
        EXPECT_EQ(note.text, at->second.text) << address;
        EXPECT_EQ(note.value, at->second.value) << address;
        EXPECT_EQ(note.sigma, at->second.sigma) << address;
        ++at;
    }
    EXPECT_EQ(at, other.end());
}

TEST(Saving, TheScenariosAreWrittenAsTheyWouldBeSaved) {
    for (const auto* name :
         {"airfield_cyclecar.json", "village_microcar.json", "lakebed_streamliner.json"}) {
        const auto text = read_file(name);
        EXPECT_EQ(save(loaded(text)), text);
    }
}

// The text is all that a pickle holds.
TEST(Saving, NothingIsLostOnTheWayThroughAText) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    const auto again = loaded(save(car));
    EXPECT_EQ(bits(car.vehicle), bits(again.vehicle));
    EXPECT_EQ(physics(car), physics(again));
    expect_same_notes(car.notes, again.notes);
    for (UpgradeSet set = 0; set < only(car.menu.size()); set += 37) {
        const auto one = install(car, set), other = install(again, set);
        ASSERT_EQ(one.index(), other.index());
        if (one.index() != 0) continue;
        EXPECT_EQ(bits(std::get<0>(one)), bits(std::get<0>(other)));
    }
}

TEST(Saving, IsTheIdentityFromTheSecondTimeOn) {
    // Keys in another order, units of the other system, a table, bare numbers, and every root key.
    const auto once = save(loaded_car(R"([{"hours": "30 min", "title": "Zwölf Löcher", "id": "a",
        "scale": {"body/mass": 0.90}, "cost": "1.50e1 ± 3 EUR"}])",
                                      R"({"notes": "two\nlines\tand a tab", "units": "us",
        "$schema": "scenario.schema.json",
        "body": {"drag_area": "7.5 ft2", "mass": "767 lb", "rolling_rise": "0 %"},
        "limits": {"manifold/boost": {"why": "hose", "max": "7 psig"}},
        "engine": {"kind": "cylinder", "stroke": "68.8 mm", "bore": "7.6 cm", "cylinders": 2.0,
                   "compression_ratio": 7.60, "rev_limit": "5000 1/min",
                   "spark": {"policy": "as_given", "table": {
                       "columns": {"retard": "deg", "engine_speed": "rpm"},
                       "rows": [[0, 1000], [2.50, 5000]]}}}})"));
    EXPECT_EQ(save(loaded(once)), once);
    for (const auto* kept :
         {"767 lb", "7.5 ft2", "7.6 cm", "30 min", "7 psig", "Zwölf", "two\\nlines",
          "1.50e1 ± 3 EUR", "scenario.schema.json", "0 %", "5000 1/min"})
        EXPECT_NE(once.find(kept), std::string::npos) << kept;
}

// The same car, typed in the other system's units.
fields::Json in_other_units() {
    auto root = fields::Json::parse(read_file("airfield_cyclecar.json"));
    root["units"] = "us";
    root["title"] = "The same under another name";
    root["notes"] = "";
    root["goal"] = {{"speed", "138 kph"}, {"run_up", "1.6 km"}};
    root["day"]["temperature"] = "306.15 ± 1 K";
    root["day"]["pressure"] = "984 ± 3 mbar";
    root["body"]["drag_area"] = "7000 ± 500 cm2";
    root["body"]["mass"] = "348000 ± 5000 g";
    root["charge_path"][0]["drop"] = "6 mbar";
    root["charge_path"][0]["at_flow"] = "1.5 kg/min";
    root["charge_path"][2]["displacement"] = "0.23 L";
    root["charge_path"][2]["leak_area"] = "0.11 ± 0.03 cm2";
    root["engine"]["bore"] = "0.076 m";
    root["engine"]["rated"]["power"] = "14500 W";
    root["engine"]["rated"]["power_speed"] = "3600 1/min";
    root["limits"]["charge_path/blower/outlet/temperature"]["max"] = "302 degF";
    auto& cooler = root["upgrades"][0];
    cooler["hours"] = "720 min";
    cooler["add"]["body/mass"] = "5000 ± 1000 g";
    cooler["insert"][0]["part"]["conductance"] = "0.06 ± 0.01 kW/K";
    return root;
}

TEST(Saving, TheUnitsOfAFileChangeNothing) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    const auto other = loaded(in_other_units().dump());
    EXPECT_EQ(bits(car.vehicle), bits(other.vehicle));
    EXPECT_EQ(bits(installed(car, only(0))), bits(installed(other, only(0))));
    EXPECT_EQ(physics(car), physics(other));
}

TEST(Saving, ADefaultWrittenOutChangesNothingButItsSigma) {
    auto root = fields::Json::parse(read_file("village_microcar.json"));
    const auto car = loaded(root.dump());
    root["charge_path"][0]["shaft"] = "8 ± 1 mm";
    EXPECT_EQ(physics(car), physics(loaded(root.dump())));
    root["charge_path"][0]["shaft"] = "8 mm";
    EXPECT_EQ(bits(car.vehicle), bits(loaded(root.dump()).vehicle));
    EXPECT_NE(physics(car), physics(loaded(root.dump())));
}

TEST(Saving, WhateverAResultDependsOnIsPhysics) {
    const auto whole = fields::Json::parse(read_file("airfield_cyclecar.json"));
    const auto before = physics(loaded(whole.dump()));
    const auto changed = [&](const char* pointer, fields::Json value) {
        auto root = whole;
        root[fields::Json::json_pointer(pointer)] = std::move(value);
        return physics(loaded(root.dump()));
    };
    for (const auto& [pointer, value] : std::vector<std::pair<const char*, fields::Json>>{
             {"/body/mass", "348 ± 6 kg"},
             {"/body/mass", "349 ± 5 kg"},
             {"/tyres/size", "145/80 R13 74T"},
             {"/engine/spark",
              {{"policy", "as_given"},
               {"table",
                {{"columns", {{"engine_speed", "rpm"}, {"retard", "deg"}}},
                 {"rows", {{1000, 0}, {5000, 3}}}}}}},
             {"/limits/engine~1piston_speed/max", "14 m/s"},
             {"/observed/0/knock", "heard"},
             {"/observed/0/speed", "122 ± 3 km/h"},
             {"/upgrades/0/cost", "261 ± 30 EUR"},
             {"/upgrades/0/hours", 13},
             {"/upgrades/0/insert/0/part/conductance", "60 ± 11 W/K"},
             {"/upgrades/0/scale/body~1drag_area", "1.01 ± 0.006"},
             {"/upgrades/0/add/body~1mass", "6 ± 1 kg"},
             {"/upgrades/2/set/charge_path~1blower~1drive_ratio", 1.61},
             {"/upgrades/2/excludes", fields::Json::array()},
             {"/upgrades/5/choose/driveline~1final_chain~1teeth_rear", {26, 28}},
             {"/upgrades/3/replace/blower/leak_area", "11 ± 3 mm2"}})
        EXPECT_NE(changed(pointer, value), before) << pointer;
    for (const auto& [pointer, value] : std::vector<std::pair<const char*, fields::Json>>{
             {"/title", "Another"},
             {"/upgrades/0/title", "Another"},
             {"/limits/engine~1piston_speed/why", "another reason"},
             {"/units", "us"}})
        EXPECT_EQ(changed(pointer, value), before) << pointer;
}

}  // namespace
}  // namespace windwall::scenario
