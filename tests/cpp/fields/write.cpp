#include "windwall/fields/write.hpp"

#include "windwall/fields/read.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

#include "fields/sample.hpp"

namespace {

using namespace windwall::fields;

struct Loaded {
    sample::Rig rig;
    ReadContext findings{group_type<sample::Rig>};

    explicit Loaded(std::string_view text) {
        const auto document = Document::parse(text, findings.problems);
        if (document.root()) read(group_type<sample::Rig>, &rig, Cursor(document, findings));
        EXPECT_EQ(findings.problems.text("f"), "");
    }
    std::string saved() const {
        return pretty(write(group_type<sample::Rig>, &rig, findings.notes));
    }
};

TEST(Write, KeepsEverythingAsItWasTyped) {
    const auto once = Loaded(sample::rig_text).saved();
    EXPECT_EQ(once, R"({
  "title": "Two drums and a fan",
  "mood": "brisk",
  "lit": true,
  "weather": {
    "temperature": "33 degC",
    "pressure": "98.4 kPa",
    "humidity": "35 ± 5 %",
    "headwind": "0 ± 1 m/s"
  },
  "body": {"mass": "348 ± 5 kg", "drag_area": "0.56 +/- 0.05 m2"},
  "duct": [
    {"id": "cloth", "kind": "sieve", "drop": "0.6 kPa"},
    {
      "id": "blower",
      "kind": "fan",
      "bore": "36 mm",
      "drive_ratio": 1.35,
      "leak_area": "9 ± 2 mm2",
      "boost": "38 kPa ± 5 %"
    }
  ],
  "drive": {"kind": "belt", "tension": "120 lbf"},
  "ratios": [3.2, 2.0, 1.45, 1.1],
  "spark": {"columns": {"turning": "rpm", "advance": "deg"}, "rows": [[1000, 10], [3000, 22.5]]},
  "hours": 12,
  "price": "260 EUR"
}
)");
    EXPECT_EQ(Loaded(once).saved(), once);
}

TEST(Write, LeavesOutWhatNobodyStated) {
    constexpr auto least = R"({
  "body": {"mass": "300 kg", "drag_area": "0.5 m2"},
  "duct": [{"id": "cloth", "kind": "sieve", "drop": "600 Pa"}],
  "drive": {"kind": "chain"},
  "ratios": [1]
}
)";
    EXPECT_EQ(Loaded(least).saved(), least);
}

TEST(Write, KeepsADefaultThatWasStated) {
    const auto text = Loaded(R"({
  "mood": "calm", "lit": false, "weather": {"pressure": "101.325 kPa"}, "rating": {},
  "body": {"mass": "300 kg", "drag_area": "0.5 m2"},
  "duct": [{"id": "cloth", "kind": "sieve", "drop": "600 Pa"}],
  "drive": {"kind": "chain", "efficiency": 0.970}, "ratios": [1], "hours": 0
})")
                          .saved();
    EXPECT_EQ(text, R"({
  "mood": "calm",
  "lit": false,
  "weather": {"pressure": "101.325 kPa"},
  "body": {"mass": "300 kg", "drag_area": "0.5 m2"},
  "rating": {},
  "duct": [{"id": "cloth", "kind": "sieve", "drop": "600 Pa"}],
  "drive": {"kind": "chain", "efficiency": 0.97},
  "ratios": [1],
  "hours": 0
}
)");
    EXPECT_EQ(Loaded(text).saved(), text);
}

TEST(Write, PutsAChangedValueInTheUnitOfItsRow) {
    Loaded loaded(sample::rig_text);
    loaded.rig.body.mass = 330;
    loaded.rig.drive.as<sample::Belt>()->tension = 500;
    loaded.rig.duct[1].part.as<sample::Fan>()->drive_ratio = 1.6;
    loaded.rig.duct[1].part.as<sample::Fan>()->boost.reset();
    loaded.rig.weather.altitude = 120;
    loaded.rig.ratios[3] = 0.1 + 0.2;
    const auto saved = write(group_type<sample::Rig>, &loaded.rig, loaded.findings.notes);
    EXPECT_EQ(saved["body"]["mass"], "330 kg");
    EXPECT_EQ(saved["drive"]["tension"], "500 N");
    EXPECT_EQ(saved["duct"][1]["drive_ratio"], 1.6);
    EXPECT_FALSE(saved["duct"][1].contains("boost"));
    EXPECT_EQ(saved["weather"]["altitude"], "120 m");
    EXPECT_EQ(saved["ratios"][3], 0.1 + 0.2);
    const auto text = loaded.saved();
    EXPECT_EQ(text.find("\"mass\": \"330 kg\"") != std::string::npos, true);
}

TEST(Write, TablesKeepTheirUnitsAndPutTheirColumnsInOrder) {
    std::string text(sample::rig_text);
    const std::string_view from =
        R"({"turning": "rpm", "advance": "deg"}, "rows": [[1000, 10], [3000, 22.5]]})";
    text.replace(
        text.find(from), from.size(),
        R"({"advance": "rad", "turning": "rad/s"}, "rows": [[0.1, 104.7], [0.4, 314.1]]})");
    const auto saved = Loaded(text).saved();
    EXPECT_NE(saved.find("{\"turning\": \"rad/s\", \"advance\": \"rad\"}"), std::string::npos)
        << saved;
    EXPECT_NE(saved.find("[[104.7, 0.1], [314.1, 0.4]]"), std::string::npos) << saved;
    EXPECT_EQ(Loaded(saved).saved(), saved);
}

TEST(Pretty, BreaksWhatDoesNotFitOnALine) {
    Json json = Json::parse(R"({"a": [], "b": {}, "c": "é\n", "rows": [[1, 2], [3, 4]]})");
    json["long"] = {std::string(60, '1'), std::string(60, '2')};
    EXPECT_EQ(pretty(json), R"({
  "a": [],
  "b": {},
  "c": "é\n",
  "rows": [[1, 2], [3, 4]],
  "long": [
    ")" + std::string(60, '1') + R"(",
    ")" + std::string(60, '2') + R"("
  ]
}
)");
}

}  // namespace
