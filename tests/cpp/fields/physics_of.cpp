#include "windwall/fields/physics_of.hpp"

#include "windwall/fields/read.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

#include "fields/sample.hpp"

namespace {

using namespace windwall::fields;

Json physics(std::string text, std::string_view from = "", std::string_view to = "") {
    if (!from.empty()) {
        EXPECT_NE(text.find(from), std::string::npos) << from;
        text.replace(text.find(from), from.size(), to);
    }
    sample::Rig rig;
    ReadContext findings(group_type<sample::Rig>);
    const auto document = Document::parse(text, findings.problems);
    read(group_type<sample::Rig>, &rig, Cursor(document, findings));
    EXPECT_EQ(findings.problems.text("f"), "");
    return physics_of(group_type<sample::Rig>, &rig, findings.notes);
}

TEST(Physics, IsTheSameHoweverItIsWritten) {
    const std::string text(sample::rig_text);
    const auto as_typed = physics(text);
    EXPECT_EQ(physics(text, "36 mm", "3.6 cm"), as_typed);
    EXPECT_EQ(physics(text, "0.6 kPa", "600 Pa"), as_typed);
    EXPECT_EQ(physics(text, "38 kPa ± 5 %", "38 +/- 1.9 kPa"), as_typed);
    EXPECT_EQ(physics(text, "Two drums and a fan", "Another name"), as_typed);
    EXPECT_EQ(physics(text, "\"mood\": \"brisk\",\n  \"lit\": true",
                      "\"lit\": true, \"mood\": \"brisk\""),
              as_typed);
}

TEST(Physics, DiffersWithEveryFactAndWithHowWellItIsKnown) {
    const std::string text(sample::rig_text);
    const auto as_typed = physics(text);
    EXPECT_NE(physics(text, "36 mm", "36.0001 mm"), as_typed);
    EXPECT_NE(physics(text, "348 ± 5 kg", "348 kg"), as_typed);
    EXPECT_NE(physics(text, "\"brisk\"", "\"wild\""), as_typed);
    EXPECT_NE(physics(text, "\"cloth\"", "\"cotton\""), as_typed);
    EXPECT_NE(physics(text, "[3000, 22.5]", "[3000, 22.6]"), as_typed);
    // A stated default is certain, an unstated one is not.
    EXPECT_NE(
        physics(text, "\"drop\": \"0.6 kPa\"", "\"drop\": \"0.6 kPa\", \"at_flow\": \"25 g/s\""),
        as_typed);
    EXPECT_EQ(physics(text, "\"drop\": \"0.6 kPa\"",
                      "\"drop\": \"0.6 kPa\", \"at_flow\": \"25 ± 2 g/s\""),
              as_typed);
}

}  // namespace
