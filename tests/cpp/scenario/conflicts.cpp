#include "files.hpp"

/// What two upgrades that may stand together must not both decide.
namespace windwall::scenario {
namespace {

constexpr auto hint = "; if they never go together, say so with \"excludes\"\n";

std::string sentence(const std::string& text) { return text + hint; }

TEST(Conflicts, TheSameValueSetTwice) {
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "set": {"charge_path/blower/drive_ratio": 1.5}},
                                  {"id": "b", "set": {"charge_path/blower/drive_ratio": 1.6}}])"),
        sentence("upgrades/b/set/charge_path/blower/drive_ratio: \"a\" sets this too, and only "
                 "one of both could count"));
}

TEST(Conflicts, AListAndOneOfItsEntries) {
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "set": {"driveline/gearbox/ratios/4": 1.0}},
                                  {"id": "b", "set": {"driveline/gearbox/ratios": [3, 2, 1]}}])"),
              sentence("upgrades/b/set/driveline/gearbox/ratios: \"a\" sets this too, and only one "
                       "of both could count"));
}

TEST(Conflicts, AValueSetAndChosen) {
    EXPECT_EQ(
        problems_of_car(R"([{"id": "a", "set": {"body/mass": "300 kg"}},
                                  {"id": "b", "choose": {"body/mass": ["310 kg", "320 kg"]}}])"),
        sentence("upgrades/b/choose/body/mass: \"a\" sets this too, and only one of both could "
                 "count"));
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "set": {"body/mass": "300 kg"},
                                   "choose": {"body/mass": ["310 kg", "320 kg"]}}])"),
              "upgrades/a/choose/body/mass: this upgrade sets it twice\n");
}

TEST(Conflicts, TheSamePartReplacedOrInsertedTwice) {
    const std::string duct = R"({"kind": "duct", "length": "1 m", "bore": "50 mm"})";
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "replace": {"filter": )" + duct + R"(}},
                                  {"id": "b", "replace": {"filter": )" +
                              duct + "}}]"),
              sentence("upgrades/b/replace/filter: \"a\" replaces this part too"));
    const std::string insert =
        R"("insert": [{"after": ["filter"], "part": {"id": "hose", "kind": "duct",
            "length": "1 m", "bore": "50 mm"}}])";
    EXPECT_EQ(problems_of_car(R"([{"id": "a", )" + insert + R"(}, {"id": "b", )" + insert + "}]"),
              sentence("upgrades/b/insert/1: \"a\" inserts this part too"));
}

TEST(Conflicts, ReachingIntoAPartThatAnotherRemoves) {
    for (const std::string verb :
         {R"("set": {"charge_path/filter/drop": "1 kPa"})",
          R"("scale": {"charge_path/filter/drop": 2})",
          R"("add": {"charge_path/filter/drop": "1 kPa"})",
          R"("choose": {"charge_path/filter/drop": ["1 kPa", "2 kPa"]})"}) {
        const auto into = R"({"id": "into", )" + verb + "}";
        const std::string removes = R"({"id": "removes", "remove": ["filter"]})";
        const auto key = verb.substr(1, verb.find('"', 1) - 1);
        EXPECT_EQ(problems_of_car("[" + removes + ", " + into + "]"),
                  sentence("upgrades/into/" + key +
                           "/charge_path/filter/drop: \"removes\" removes the part that this "
                           "reaches into"));
        EXPECT_EQ(problems_of_car("[" + into + ", " + removes + "]"),
                  sentence("upgrades/removes/remove/1: \"into\" reaches into this part"));
    }
}

TEST(Conflicts, ReplacingAPartThatAnotherRemoves) {
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "remove": ["filter"]}, {"id": "b", "replace": {
                  "filter": {"kind": "duct", "length": "1 m", "bore": "50 mm"}}}])"),
              sentence("upgrades/b/replace/filter: \"a\" removes the part that this reaches into"));
}

TEST(Conflicts, NotWhereTheTwoNeverStandTogether) {
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "set": {"charge_path/blower/drive_ratio": 1.5}},
                                  {"id": "b", "set": {"charge_path/blower/drive_ratio": 1.6},
                                   "excludes": ["a"]}])"),
              "");
    // b requires c, which excludes a.
    EXPECT_EQ(problems_of_car(R"([{"id": "a", "set": {"charge_path/blower/drive_ratio": 1.5},
                                   "excludes": ["c"]},
                                  {"id": "b", "set": {"charge_path/blower/drive_ratio": 1.6},
                                   "requires": ["c"]},
                                  {"id": "c"}])"),
              "");
}

TEST(Conflicts, TwoMayRemoveTheSamePart) {
    const auto car =
        loaded_car(R"([{"id": "a", "remove": ["filter"]}, {"id": "b", "remove": ["filter"]}])");
    EXPECT_EQ(bits(installed(car, 0b01)), bits(installed(car, 0b11)));
}

TEST(Conflicts, TwoThatExcludeEachOtherMayBringAPartOfOneName) {
    const auto car = loaded_car(R"([
        {"id": "small", "insert": [{"after": ["filter"], "part": {"id": "hose", "kind": "duct",
            "length": "1 m", "bore": "50 mm"}}]},
        {"id": "wide", "excludes": ["small"], "insert": [{"after": ["filter"], "part": {"id": "hose",
            "kind": "duct", "length": "1 m", "bore": "60 mm"}}]}])");
    EXPECT_EQ(refused(car, 0b11), "\"small\" and \"wide\" exclude each other");
    EXPECT_EQ(installed(car, 0b10).charge_path[1].part.as<charge::Duct>()->bore, 0.06);
}

}  // namespace
}  // namespace windwall::scenario
