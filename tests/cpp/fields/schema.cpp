#include "windwall/fields/schema.hpp"

#include "windwall/fields/quantity.hpp"
#include "windwall/fields/quantity_pattern.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <regex>
#include <string>

#include "fields/sample.hpp"

namespace {

using namespace windwall::fields;

// The pattern in the schema and the reader are two statements of one grammar.

TEST(Pattern, TakesEveryUnitWhereTheReaderTakesIt) {
    for (int at = 0; at <= static_cast<int>(Dimension::labour); ++at) {
        const auto dimension = static_cast<Dimension>(at);
        const Measure measure{dimension, units_of(dimension).front().text};
        const std::regex pattern(quantity_pattern(measure));
        for (const auto& unit : all_units()) {
            const auto text = "3.5 " + std::string(unit.text);
            EXPECT_EQ(std::regex_match(text, pattern), bool(read_quantity(text, measure)))
                << text << " as " << name_of(dimension);
        }
    }
}

TEST(Pattern, AgreesWithTheReaderOnOddTexts) {
    const std::string texts[] = {
        "5 m²",          "5 m^2",       "5 m·2",      "5m2",      "51/m",
        "5 1/m",         "5 ± 1 1/m",   "5 ± 11/m",   "5 ± 1/m",  "3 N·m",
        "3 N*m",         "3 N  m",      "3 °C",       "3 ° C",    "30 °",
        "1e3 m",         "1e mm",       "01 mm",      "1. mm",    ".5 mm",
        "-1 mm",         "- 1 mm",      "+1 mm",      "1 ± 1 mm", "1 ± -1 mm",
        "1 +/- 1e-1 mm", "1 ± mm",      "1 mm ± 5 %", "1 mm ± 5", "1 mm ± 5 mm",
        "30 degC ± 5 %", "35 ± 5 %",    "35 % ± 5 %", "35 %",     "35",
        "0.8 ± 0.1",     "0.8 ± 5 %",   "",           " ",        "  1 mm  ",
        "1,5 mm",        "inf mm",      "12",         "12 h",     "12 ± 2 h",
        "12 ± 2",        "12 h ± 10 %", "1\tmm",      "1 mm\n",   "5 EUR",
        "5EUR",          "5 eur"};
    for (const auto& measure :
         {length("mm"), area("m2"), per_length("1/m"), torque("N m"), temperature("degC"),
          angle("deg"), number(), percent(), labour("h"), money("EUR")}) {
        const std::regex pattern(quantity_pattern(measure));
        for (const auto& text : texts)
            EXPECT_EQ(std::regex_match(text, pattern), bool(read_quantity(text, measure)))
                << text << " as " << named(measure);
    }
}

TEST(Pattern, OfWholeNumbersAgreesWithTheReader) {
    const auto row = whole(required("teeth", "z", {}, number(), {-10, 100}, "Teeth"));
    const std::regex pattern(whole_number_pattern());
    for (const auto* text : {"5", "-5", " 5 ", "0", "05", "5.0", "5.00", "5.5", "5.", "5 ± 1",
                             "5 ± 0.5", "5 mm", "", "five", "5 +/- 1", "5,0"})
        EXPECT_EQ(std::regex_match(text, pattern), bool(read_quantity(text, row))) << text;
}

TEST(Schema, DescribesARowOnce) {
    const auto schema = document_schema(group_type<sample::Rig>, "Rig", Json::object());
    EXPECT_EQ(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    EXPECT_EQ(schema["additionalProperties"], false);
    EXPECT_EQ(schema["required"], Json({"body", "duct", "drive", "ratios"}));
    EXPECT_EQ(schema["properties"]["mood"]["enum"], Json({"calm", "brisk", "wild"}));
    EXPECT_EQ(schema["properties"]["mood"]["default"], "calm");
    const auto& pressure = schema["properties"]["weather"]["properties"]["pressure"];
    EXPECT_EQ(pressure["$ref"], "#/$defs/pressure_above_vacuum");
    EXPECT_EQ(pressure["default"], "101.325 kPa");
    EXPECT_EQ(
        pressure["description"],
        "Pressure where the rig stands. From 60 to 110 kPa above vacuum. Usually 101.325 kPa, "
        "give or take "
        "1 kPa (common practice).");
    const auto& fan = schema["properties"]["duct"]["items"]["allOf"][1];
    EXPECT_EQ(fan["if"]["properties"]["kind"]["const"], "fan");
    EXPECT_EQ(fan["then"]["required"], Json({"id", "kind", "bore", "drive_ratio"}));
    EXPECT_EQ(fan["then"]["properties"]["drive_ratio"]["maximum"], 5);
}

}  // namespace
