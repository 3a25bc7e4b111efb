#include "windwall/fields/read.hpp"

#include <gtest/gtest.h>

#include <string>

#include "fields/sample.hpp"

namespace {

using namespace windwall::fields;

struct Read {
    sample::Rig rig;
    ReadContext findings{group_type<sample::Rig>};

    explicit Read(std::string_view text) {
        const auto document = Document::parse(text, findings.problems);
        if (document.root()) read(group_type<sample::Rig>, &rig, Cursor(document, findings));
    }
    std::string problems() const { return findings.problems.text("rig.json"); }
};

std::string changed(std::string_view from, std::string_view to) {
    std::string text(sample::rig_text);
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

TEST(Read, FillsEveryShape) {
    const Read read(sample::rig_text);
    ASSERT_EQ(read.problems(), "");
    const auto& rig = read.rig;
    EXPECT_EQ(rig.title, "Two drums and a fan");
    EXPECT_EQ(rig.mood, sample::Mood::brisk);
    EXPECT_TRUE(rig.lit);
    EXPECT_EQ(rig.weather.temperature, 306.15);
    EXPECT_EQ(rig.weather.pressure, 98400);
    EXPECT_EQ(rig.weather.humidity, 0.35);
    EXPECT_FALSE(rig.weather.altitude);
    EXPECT_EQ(rig.body.mass, 348);
    EXPECT_FALSE(rig.rating);
    ASSERT_EQ(rig.duct.size(), 2u);
    EXPECT_EQ(rig.duct[1].id, "blower");
    const auto* fan = rig.duct[1].part.as<sample::Fan>();
    ASSERT_TRUE(fan);
    EXPECT_EQ(fan->bore, 0.036);
    EXPECT_EQ(fan->boost, 38000);
    ASSERT_TRUE(rig.drive.as<sample::Belt>());
    EXPECT_EQ(rig.drive.as<sample::Belt>()->tension, 120 * 4.4482216152605);
    EXPECT_EQ(rig.ratios, (std::vector{3.2, 2.0, 1.45, 1.1}));
    EXPECT_EQ(rig.spark.column[1].size(), 2u);
    EXPECT_EQ(rig.hours, 12);
    EXPECT_EQ(rig.price, 260);
}

TEST(Read, NotesHowItWasTypedHowWellItIsKnownAndWhere) {
    const Read read(sample::rig_text);
    const auto* note = read.findings.notes.find("duct/blower/boost");
    ASSERT_TRUE(note);
    EXPECT_EQ(note->text, "38 kPa ± 5 %");
    EXPECT_EQ(note->sigma, 1900);
    EXPECT_EQ(note->place, (Place{9, 110}));
    ASSERT_TRUE(read.findings.notes.find("ratios/3"));
    EXPECT_EQ(read.findings.notes.find("ratios/3")->text, "1.45");
    EXPECT_FALSE(read.findings.notes.given("duct/cloth/at_flow"));
}

TEST(Read, TellsAllMistakesAtOnce) {
    const Read read(R"({
  "title": "Ten mistakes",
  "mood": "briks",
  "lit": "yes",
  "weather": {"temperature": "33 C", "pressure": "14.2 psi", "humidity": 35},
  "body": {"mas": "348 kg", "drag_area": "0.56 m"},
  "duct": [
    {"id": "Cloth", "kind": "sieve", "drop": 600},
    {"id": "blower", "kind": "fann"},
    {"id": "blower", "kind": "fan", "bore": "360 mm", "drive_ratio": 1.35}
  ],
  "ratios": [3.2, "two"]
}
)");
    EXPECT_EQ(
        read.problems(),
        R"(rig.json:1:1 drive: is missing (What turns the fan); its kind is one of belt or chain
rig.json:3:11 mood: "briks" is not known here; it is one of calm, brisk or wild; did you mean "brisk"?
rig.json:4:10 lit: true or false is expected, found a text
rig.json:5:30 weather/temperature: "33 C": C is written "degC" here; write for example "33 degC"
rig.json:5:50 weather/pressure: "14.2 psi": psi does not say whether it counts from vacuum (psia) or from the local air (psig), and a pressure above vacuum is expected; write for example "97.9 kPa absolute"
rig.json:5:74 weather/humidity: 35 what? a percentage needs its unit; write for example "35 %"
rig.json:6:12 body/mas: there is no "mas" here; did you mean "mass"? (Mass with the driver)
rig.json:6:42 body/drag_area: "0.56 m": m is the unit of a length, and an area is expected (mm2, cm2, m2, in2, ft2); write for example "0.56 m2"
rig.json:8:12 duct/1/id: "Cloth" is no id: small letters, digits and _ make one, and a letter begins it
rig.json:8:46 duct/1/drop: 600 what? a pressure difference needs its unit; write for example "600 Pa"
rig.json:9:30 duct/blower/kind: "fann" is not known here; it is one of sieve or fan; did you mean "fan"?
rig.json:10:12 duct/3/id: "blower" is the id of a part already
rig.json:10:45 duct/3/bore: 360 mm is outside 8 to 120 mm
rig.json:12:19 ratios/2: "two" is not understood: it does not start with a number; write for example "1.5"
)");
}

TEST(Read, RulesAcrossFieldsPointAtTheirKey) {
    const Read read(changed(R"("headwind": "0 ± 1 m/s")", R"("altitude": "4100 m")"));
    EXPECT_EQ(read.problems(),
              "rig.json:5:89 weather/altitude: no place this high has so much air\n");
}

TEST(Read, ProseMayBreakLinesAndNothingElse) {
    EXPECT_EQ(Read(changed("Two drums and a fan", "One\\n\\ttwo")).rig.title, "One\n\ttwo");
    for (const auto* steering : {"\\u001b[2J", "\\u202e", "\\u0085", "\\u0000"})
        EXPECT_EQ(Read(changed("Two drums", steering)).problems(),
                  "rig.json:2:12 title: a text must not hold characters that steer a screen\n");
}

TEST(Read, TablesAreHeldCellByCell) {
    const std::string_view rows = "[[1000, 10], [3000, 22.5]]";
    const std::string_view units = R"({"turning": "rpm", "advance": "deg"})";
    EXPECT_EQ(Read(changed(rows, "[[1000, 10], [3000, 90], [1], 5, [\"x\", 1]]")).problems(),
              "rig.json:13:90 spark/rows/2/2: 90 deg is outside -20 to 60 deg\n"
              "rig.json:13:95 spark/rows/3: a list of 2 numbers is expected, one for each column; "
              "found a list of 1\n"
              "rig.json:13:100 spark/rows/4: a list of 2 numbers is expected, one for each column; "
              "found a number\n"
              "rig.json:13:104 spark/rows/5/1: a plain number is expected, its unit is the "
              "column's; found a text\n");
    EXPECT_EQ(Read(changed(units, R"({"turning": "mm", "advanc": "deg"})")).problems(),
              "rig.json:13:36 spark/columns/turning: mm is the unit of a length, and a rotational "
              "speed is expected (rpm, rad/s)\n"
              "rig.json:13:42 spark/columns/advanc: there is no \"advanc\" here; did you mean "
              "\"advance\"? (Spark before top dead centre)\n");
    EXPECT_EQ(Read(changed(rows, "[]")).problems(),
              "rig.json:13:70 spark/rows: a table has 1 to 4096 rows, found 0\n");
}

}  // namespace
