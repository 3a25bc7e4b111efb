#include "windwall/fields/field_path.hpp"

#include "windwall/fields/read.hpp"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>

#include "fields/sample.hpp"

namespace {

using namespace windwall::fields;

sample::Rig make() {
    sample::Rig rig;
    ReadContext findings(group_type<sample::Rig>);
    const auto document = Document::parse(sample::rig_text, findings.problems);
    read(group_type<sample::Rig>, &rig, Cursor(document, findings));
    EXPECT_TRUE(findings.problems.empty());
    return rig;
}

Expected<FieldPath> find(const sample::Rig& rig, std::string_view address) {
    return find_number(group_type<sample::Rig>, &rig, address);
}

TEST(Address, LeadsToTheMember) {
    auto rig = make();
    const auto path = find(rig, "duct/blower/drive_ratio");
    ASSERT_TRUE(path) << path.violation;
    EXPECT_EQ(&path->at(&rig), &rig.duct[1].part.as<sample::Fan>()->drive_ratio);
    EXPECT_EQ(path->row().key, "drive_ratio");
    EXPECT_EQ(path->text(), "duct/blower/drive_ratio");
    EXPECT_EQ(&find(rig, "ratios/3")->at(&rig), &rig.ratios[2]);
    EXPECT_EQ(&find(rig, "drive/tension")->at(&rig), &rig.drive.as<sample::Belt>()->tension);
    EXPECT_EQ(&find(rig, "weather/pressure")->at(&rig), &rig.weather.pressure);
}

TEST(Address, HoldsForEveryCopy) {
    const auto rig = make();
    const auto path = find(rig, "duct/blower/bore");
    auto copy = rig;
    path->at(&copy) = 0.04;
    EXPECT_EQ(path->get(&rig), 0.036);
    EXPECT_EQ(path->get(&copy), 0.04);
}

TEST(Address, AnEmptyOptionalIsFilledBySettingOnly) {
    auto rig = make();
    const auto path = find(rig, "weather/altitude");
    ASSERT_TRUE(path);
    EXPECT_EQ(path->get(&rig), std::nullopt);
    EXPECT_FALSE(rig.weather.altitude);
    path->at(&rig) = 120;
    EXPECT_EQ(rig.weather.altitude, 120);
}

TEST(Address, EveryOneListedIsFound) {
    const auto rig = make();
    const auto paths = all_numbers(group_type<sample::Rig>, &rig);
    std::string list;
    for (const auto& path : paths) {
        list += path.text() + "\n";
        EXPECT_TRUE(find(rig, path.text()));
    }
    EXPECT_EQ(list, R"(weather/temperature
weather/pressure
weather/humidity
weather/headwind
weather/altitude
body/mass
body/drag_area
duct/cloth/drop
duct/cloth/at_flow
duct/blower/bore
duct/blower/drive_ratio
duct/blower/leak_area
duct/blower/boost
drive/tension
ratios/1
ratios/2
ratios/3
ratios/4
hours
price
)");
}

TEST(Address, AWrongOneNamesTheNearest) {
    const auto rig = make();
    EXPECT_EQ(find(rig, "duct/blower/drive_rato").violation,
              "\"duct/blower/drive_rato\" is no number of this vehicle; did you mean "
              "\"duct/blower/drive_ratio\"?");
    EXPECT_EQ(find(rig, "drag_area").violation,
              "\"drag_area\" is no number of this vehicle; did you mean \"body/drag_area\"?");
    EXPECT_EQ(find(rig, "duct/blower").violation,
              "\"duct/blower\" is no number of this vehicle: it is a part or a list; name one of "
              "its numbers");
    EXPECT_FALSE(find(rig, ""));
    EXPECT_FALSE(find(rig, "ratios/5"));
    EXPECT_FALSE(find(rig, "title"));
}

TEST(Address, AnotherVehicleIsNotMistakenForTheExample) {
    const auto rig = make();
    const auto path = find(rig, "duct/blower/bore");
    auto other = rig;
    other.duct[1].part = sample::Sieve{};
    EXPECT_THROW(path->at(&other), std::logic_error);
    other.duct.pop_back();
    EXPECT_THROW(path->at(&other), std::logic_error);
}

}  // namespace
