#include "files.hpp"

/// Everything that is wrong with a file is said at once, once, and where it stands.
namespace windwall::scenario {
namespace {

TEST(Problems, TenMistakesAreTenProblemsWithTheirPlaces) {
    const auto read = load(read_file("invalid/ten_mistakes.json"), "ten_mistakes.json");
    EXPECT_FALSE(read);
    EXPECT_EQ(read.problems.size(), 10u);
    EXPECT_EQ(read.violation(), read_file("invalid/ten_mistakes.txt"));
}

TEST(Problems, AreInTheOrderOfTheText) {
    const auto problems = load(read_file("invalid/ten_mistakes.json")).problems.sorted();
    for (std::size_t at = 1; at < problems.size(); ++at) {
        const auto &before = problems[at - 1], &after = problems[at];
        EXPECT_LT(std::pair(before.line, before.column), std::pair(after.line, after.column));
    }
}

TEST(Problems, AnAddressIsCheckedOverTheRequirementsOfItsUpgrade) {
    const std::string hose = R"({"id": "hose", "insert": [{"after": ["filter"], "part": {
        "id": "snake", "kind": "duct", "length": "1 m", "bore": "50 mm"}}]})";
    EXPECT_EQ(problems_of_car("[" + hose + R"(, {"id": "wide", "requires": ["hose"],
                  "set": {"charge_path/snake/bore": "60 mm"}}])"),
              "");
    EXPECT_EQ(
        problems_of_car("[" + hose + R"(, {"id": "wide",
                  "set": {"charge_path/snake/bore": "60 mm"}}])"),
        "upgrades/wide/set/charge_path/snake/bore: that part comes with the upgrade \"hose\", "
        "which this one would have to require\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "off", "remove": ["filter"],
                  "set": {"charge_path/filter/drop": "1 kPa"}}])"),
        "upgrades/off/set/charge_path/filter/drop: \"charge_path/filter/drop\" is no number of "
        "this vehicle\n");
}

TEST(Problems, WhatLeadsToAProblemIsNotReportedAgain) {
    // An unknown kind, a part without id, and a list under a wrong name hide what they hold.
    const auto broken = [](const char* text) {
        return problems_of_car(R"([{"id": "a", "set": {"charge_path/blower/drive_ratio": 1.5},
                                    "insert": [{"after": ["blower"], "part": {"id": "hose",
                                    "kind": "duct", "length": "1 m", "bore": "50 mm"}}]}])",
                               text);
    };
    EXPECT_EQ(broken(R"({"charge_path": [{"id": "blower", "kind": "blower"}], "limits": {}})"),
              "charge_path/blower/kind: \"blower\" is not known here; it is one of filter, duct, "
              "throttle, positive_blower, mapped_compressor, charge_cooler, bypass, plenum, "
              "evaporative_injection, carburettor or leak\n");
    EXPECT_EQ(broken(R"({"charge_path": [{"kind": "plenum", "volume": "1 L"}], "limits": {}})"),
              "charge_path/1/id: is missing; every part has an id of its own\n");
    EXPECT_EQ(broken(R"({"charge_path": [], "limits": {}})"),
              "charge_path: at least one part is needed\n");
    EXPECT_EQ(
        problems_of_car(R"([
                  {"id": "a", "insert": [{"after": ["filter"], "part": {"id": "hose", "kind": "dict"}}],
                   "set": {"charge_path/hose/bore": "40 mm"}},
                  {"id": "b", "requires": ["a"], "scale": {"charge_path/hose/length": 2}}])"),
        "upgrades/a/insert/1/part/kind: \"dict\" is not known here; it is one of filter, duct, "
        "throttle, positive_blower, mapped_compressor, charge_cooler, bypass, plenum, "
        "evaporative_injection, carburettor, leak, clutch, centrifugal_clutch, chain, belt, "
        "gearbox, final_drive or belt_cvt; did you mean \"duct\"?\n");
}

TEST(Problems, ResultsAndInputsRefuseEachOtherByName) {
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "scale": {"knock/margin": 2}}])"),
        "upgrades/a/scale/knock/margin: \"knock/margin\" is a result, not an input: it follows "
        "from the others; it can stand in limits\n");
    EXPECT_EQ(problems_of_car("[]", R"({"limits": {"body/mass": {"max": "1 kg", "why": "so"}}})"),
              "limits/body/mass: \"body/mass\" is an input; a limit is put on a result, such as "
              "manifold/temperature\n");
}

TEST(Problems, LimitsAreReadByTheUnitOfTheirResult) {
    const auto limit = [](const std::string& text) {
        return problems_of_car("[]", R"({"limits": )" + text + "}");
    };
    EXPECT_EQ(limit(R"({"manifold/boost": {"max": "50 kPa", "min": "5 psig", "why": "hose"}})"),
              "");
    EXPECT_EQ(limit(R"({"knock/margin": {"min": 3, "why": "hot days"}})"), "");
    EXPECT_EQ(
        limit(R"({"manifold/boost": {"max": "50 mm", "why": "hose"}})"),
        "limits/manifold/boost/max: \"50 mm\": mm is the unit of a length, and a pressure above "
        "the local air is expected (Pa, hPa, mbar, kPa, barg, mmHg gauge, mmH2O gauge, inHg "
        "gauge, inH2O gauge, psig)\n");
    EXPECT_EQ(limit(R"({"manifold/boost": {"why": "hose"}})"),
              "limits/manifold/boost/max: is missing; a limit has a max, a min or both\n");
    EXPECT_EQ(limit(R"({"manifold/boost": {"max": "1 kPa", "min": "2 kPa", "why": "hose"}})"),
              "limits/manifold/boost/max: the max is below the min, so nothing could be within\n");
    EXPECT_EQ(limit(R"({"manifold/boost": {"max": "1 kPa"}})"),
              "limits/manifold/boost/why: is missing (What happens beyond the limit)\n");
    EXPECT_EQ(limit(R"({"manifold/bost": {"max": "1 kPa", "why": "hose"}})"),
              "limits/manifold/bost: \"manifold/bost\" is no number of this vehicle; did you mean "
              "\"manifold/boost\"?\n");
}

TEST(Problems, ALimitMayBePutOnAPartThatAnUpgradeBrings) {
    const auto car = loaded_car(R"([{"id": "hose", "insert": [{"after": ["filter"], "part": {
        "id": "snake", "kind": "duct", "length": "1 m", "bore": "50 mm"}}]}])",
                                R"({"limits": {"charge_path/snake/pressure_drop":
                                    {"max": "2 kPa", "why": "it collapses"}}})");
    EXPECT_EQ(car.limits[0].max, 2000);
}

TEST(Problems, AnUpgradeHasToMakeAValidVehicle) {
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "scale": {"body/mass": 0.01}}])"),
              "upgrades/a/scale/body/mass: body/mass would be 3.480 kg, outside 20 to 5000 kg\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "set": {"charge_path/throttle/shaft": "19 mm"},
                                   "scale": {"charge_path/throttle/bore": 0.5}}])"),
        "upgrades/a/set/charge_path/throttle/shaft: the shaft is as thick as the bore; nothing "
        "could flow\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "scale": {"body/mass": 0.2}},
                                  {"id": "b", "requires": ["a"], "scale": {"body/mass": 0.2}}])"),
        "upgrades/b: with what it requires, body/mass would be 13.92 kg, outside 20 to 5000 kg\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "add": {"engine/injector/rail_pressure": "1 kPa"}}])"),
        "upgrades/a/add/engine/injector/rail_pressure: nothing is stated under \"injector\"\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "set": {"engine/injector/count": 2}}])"),
        "upgrades/a/set/engine/injector/count: \"rated_flow\" of injector has to be stated with "
        "it\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "scale": {"body/wheel_inertia": 2}}])"),
        "upgrades/a/scale/body/wheel_inertia: \"body/wheel_inertia\" is not stated, so it cannot "
        "be changed\n");
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "set": {"tyres/size": "large"}}])").substr(0, 71),
              "upgrades/a/set/tyres/size: The tyre size \"large\" is not understood: it ");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "choose": {"driveline/gearbox/ratios/4": [1, 1.3, 9]}}])"),
        "upgrades/a/choose/driveline/gearbox/ratios/4: Ratios go from first gear to top, so none "
        "may be larger than the one before it.\n");
}

// One engine speed can be held by one belt drive.
TEST(Problems, ADrivelineHasOneVariatorAtMost) {
    const std::string belt =
        R"({"id": "belt", "kind": "belt_cvt", "low_ratio": 2.7, "high_ratio": 0.8,
            "shift_speed": "4200 rpm", "rated_torque": "40 N m"})";
    std::string second = belt;
    second.replace(second.find("belt"), 4, "other");
    std::string nameless = belt;
    nameless.erase(nameless.find("\"id\""), std::string("\"id\": \"belt\", ").size());
    const auto driveline = [&](const std::string& parts) {
        return R"({"driveline": [)" + parts + R"(], "limits": {}, "observed": []})";
    };
    const std::string sentence =
        "both vary their ratio; at most one part may, since one alone can hold the engine's speed";
    EXPECT_EQ(problems_of_car("[]", driveline(belt)), "");
    EXPECT_EQ(problems_of_car("[]", driveline(belt + "," + second)),
              "driveline: \"belt\" and \"other\" " + sentence + "\n");
    // An upgrade may not bring a second one either, but two may bring one each.
    const auto brings = [&](const std::string& id, const std::string& part) {
        return R"({"id": ")" + id + R"(", "insert": [{"after": ["clutch"], "part": )" + part +
               "}]}";
    };
    EXPECT_EQ(problems_of_car("[" + brings("a", second) + "]",
                              driveline(R"({"id": "clutch", "kind": "clutch"},)" + belt)),
              "upgrades/a/insert/1: \"other\" and \"belt\" " + sentence + "\n");
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "replace": {"clutch": )" + nameless +
                                  R"(}, "insert": [{"after": ["filter"], "part": {
                  "id": "box", "kind": "plenum", "volume": "1 L"}}]}])",
                              driveline(R"({"id": "clutch", "kind": "clutch"},)" + belt)),
              "upgrades/a/replace/clutch: \"clutch\" and \"belt\" " + sentence + "\n");
    const auto car = loaded_car("[" + brings("a", belt) + "," + brings("b", second) + "]");
    EXPECT_EQ(installed(car, 0b01).driveline.size(), installed(car, 0b10).driveline.size());
    EXPECT_EQ(refused(car, 0b11), "\"b\": \"other\" and \"belt\" " + sentence);
    // What is wrong with the vehicle is not said again of what is put into it.
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "insert": [{"after": ["filter"], "part": {
                  "id": "box", "kind": "plenum", "volume": "1 L"}}]}])",
                              driveline(belt + "," + second)),
              "driveline: \"belt\" and \"other\" " + sentence + "\n");
}

TEST(Problems, PartsThatAreNotThere) {
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "remove": ["fliter"]}])"),
              "upgrades/a/remove/1: there is no part \"fliter\" in the vehicle\n");
    EXPECT_EQ(problems_of_car(
                  R"([{"id": "a", "replace": {"gearbox": {"kind": "plenum", "volume": "1 L"}}}])"),
              "upgrades/a/replace/gearbox: there is no part \"gearbox\" in the charge path\n");
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "insert": [{"after": ["gearbox", "intake"],
                  "part": {"id": "pot", "kind": "plenum", "volume": "1 L"}}]}])"),
              "upgrades/a/insert/1: none of the parts that \"pot\" could stand next to is in the "
              "charge path\n");
}

TEST(Problems, WrongShapesOfUpgrades) {
    EXPECT_EQ(problems_of_car(R"({"id": "a"})"),
              "upgrades: a list of upgrades is expected here, found an object\n");
    EXPECT_EQ(problems_of_car(R"(["a", {"title": "b"}, {"id": "A"}, {"id": 3}])"),
              "upgrades/1: an upgrade is expected here, an object; found a text\n"
              "upgrades/2/id: is missing; every upgrade has an id of its own\n"
              "upgrades/3/id: \"A\" is no id: small letters, digits and _ make one, and a letter "
              "begins it\n"
              "upgrades/4/id: an id is a text, found a number\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "sets": {}, "remove": "filter", "insert": {},
                                   "replace": [], "scale": 3, "requires": [1]}])"),
        "upgrades/a/sets: there is no \"sets\" here; did you mean \"set\"?\n"
        "upgrades/a/remove: a list of ids is expected here, found a text\n"
        "upgrades/a/insert: a list of parts and where they go is expected here, found an object\n"
        "upgrades/a/replace: an object {id: part} is expected here, found a list\n"
        "upgrades/a/scale: an object of addresses is expected here, found a number\n"
        "upgrades/a/requires/1: an id is a text, found a number\n");
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "insert": [3, {}, {"after": [], "part": 3},
                  {"after": ["filter"], "before": ["plenum"], "part": {"id": "drop", "kind": "plenum",
                   "volume": "1 L"}},
                  {"after": ["filter"], "part": {"id": "blower", "kind": "plenum", "volume": "1 L"}}]}])"),
        "upgrades/a/insert/1: an object with a part and after or before is expected here, found "
        "a number\n"
        "upgrades/a/insert/2/after: say after or before which part, one of the two\n"
        "upgrades/a/insert/2/part: is missing; it is the part to insert\n"
        "upgrades/a/insert/3/after: at least one id is needed\n"
        "upgrades/a/insert/3/part: a part is expected here, an object with a kind; found a "
        "number\n"
        "upgrades/a/insert/4/after: say after or before which part, one of the two\n"
        "upgrades/a/insert/4/part/id: \"drop\" is the name of a field, and no id\n"
        "upgrades/a/insert/5/part/id: \"blower\" is the id of a part already\n");
}

TEST(Problems, ValuesOfTheWrongSort) {
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "add": {"day/temperature": "5 degC",
                  "engine/spark/policy": 1, "day/pressure": "1 psia"},
                  "scale": {"body/mass": 0, "tyres/size": 2, "body/drag_area": "0.9 m2"},
                  "set": {"body/mass": null, "day/headwind": 3, "engine/spark/policy": "hold"},
                  "choose": {"body/mass": ["300 kg"], "body/drag_area": "0.5 m2"}}])"),
        "upgrades/a/add/day/temperature: \"5 degC\": degC is the unit of a temperature, and a "
        "temperature difference is expected (K, delta_degF)\n"
        "upgrades/a/add/engine/spark/policy: only a number can be added to\n"
        "upgrades/a/add/day/pressure: \"1 psia\": psia counts from vacuum, and a pressure "
        "difference is expected (Pa, hPa, mbar, kPa, bar, mmHg, mmH2O, inHg, inH2O, psi); between "
        "two places neither counts: leave it out; write for example \"6.89 kPa\"\n"
        "upgrades/a/scale/body/mass: a factor above 0 and up to 1000 is expected, found 0\n"
        "upgrades/a/scale/tyres/size: only a number can be scaled\n"
        "upgrades/a/scale/body/drag_area: \"0.9 m2\": m2 is the unit of an area, and a plain "
        "number is expected; write for example \"0.9\"\n"
        "upgrades/a/set/body/mass: a mass such as \"320 kg\" is expected, found null\n"
        "upgrades/a/set/day/headwind: 3 what? a speed needs its unit; write for example "
        "\"3 m/s\"\n"
        "upgrades/a/set/engine/spark/policy: \"hold\" is not known here; it is one of "
        "hold_margin or as_given\n"
        "upgrades/a/choose/body/mass: a list of 2 to 16 values to choose from is expected here, "
        "found 1\n"
        "upgrades/a/choose/body/drag_area: a list of 2 to 16 values to choose from is expected "
        "here, found a text\n");
}

TEST(Problems, OneFileCountsInOneCurrency) {
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "cost": "10 EUR"}, {"id": "b", "cost": "10 USD"},
                                  {"id": "c", "cost": "-3 EUR"}])"),
              "upgrades/b/cost: one file counts in one currency, and the sums above are in EUR\n"
              "upgrades/c/cost: -3 EUR is outside 0 to 10000000 EUR\n");
    EXPECT_EQ(loaded_car(R"([{"id": "a", "cost": "10 ± 2 SEK", "hours": 3}])").currency, "SEK");
}

TEST(Problems, ObservationsAreFactsInTheirRanges) {
    EXPECT_EQ(
        problems_of_car("[]", R"({"observed": [{"what": "top speed"}, {"what": "flight",
                  "speed": "10 km/h"}, {"what": "full throttle", "boost": "30 kPa", "gear": 0}]})"),
        "observed/1/what: nothing was observed: state a speed, a pressure, a temperature or what "
        "was heard of knock\n"
        "observed/2/what: \"flight\" is not known here; it is one of top speed, full throttle, "
        "held speed, standing start, coast-down or nozzle into a jar\n"
        "observed/3/gear: 0 is outside the whole numbers 1 to 24\n");
}

TEST(Problems, WhatWasDoneSaysWhatBelongsToIt) {
    const auto seen = [](const std::string& entry) {
        return problems_of_car("[]", R"({"observed": [{"what": )" + entry + "}]}");
    };
    const auto table = [&](const std::string& rows) {
        return seen(R"("coast-down", "coasting": {"columns": {"time": "s", "speed": "km/h"},)"
                    R"("rows": )" +
                    rows + "}");
    };
    EXPECT_EQ(seen(R"("held speed", "fuel_used": "2 L", "time": "1 h")"),
              "observed/1/speed: a held speed needs its speed\n");
    EXPECT_EQ(seen(R"("held speed", "speed": "60 km/h", "fuel_used": "2 L")"),
              "observed/1/fuel_used: over what? State the distance or the time that it took\n");
    EXPECT_EQ(seen(R"("standing start", "time": "20 s")"),
              "observed/1/time: to where? State either the distance or the speed it was taken "
              "at\n");
    EXPECT_EQ(table("[[0, 90], [1, 88]]"),
              "observed/1/coasting: three rows or more tell how a vehicle slows down\n");
    EXPECT_EQ(table("[[0, 90], [2, 86], [2, 84]]"),
              "observed/1/coasting: times must rise from row to row\n");
    EXPECT_EQ(table("[[0, 80], [2, 86], [3, 84]]"),
              "observed/1/coasting: the last speed must be below the first\n");
    EXPECT_EQ(seen(R"("nozzle into a jar", "part": "filter", "time": "60 s",)"
                   R"("pressure": "7 bar", "caught": "100 cm3")"),
              "observed/1/part: there is no evaporative_injection \"filter\" in the charge path\n");
    EXPECT_EQ(seen(R"("standing start", "time": "20 ± 0.3 s", "distance": "402 m")"), "");
}

TEST(Problems, TheChoicesOfAMenuAreBounded) {
    const auto choice = [](const std::string& id, const std::string& address) {
        return R"({"id": ")" + id + R"(", "choose": {")" + address +
               R"(": [1,1.01,1.02,1.03,1.04,1.05,1.06,1.07,1.08,1.09]}})";
    };
    EXPECT_EQ(
        problems_of_car("[" + choice("a", "charge_path/blower/drive_ratio") + "," +
                        choice("b", "driveline/gearbox/ratios/4") + "," +
                        choice("c", "charge_path/blower/built_in_ratio") + "]"),
        "upgrades/c/choose/charge_path/blower/built_in_ratio: with this one, the choices of all "
        "upgrades make more than 256 combinations\n");
}

}  // namespace
}  // namespace windwall::scenario
