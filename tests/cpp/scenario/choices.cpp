#include "windwall/scenario/choices.hpp"

#include "scenario/files.hpp"

namespace windwall::scenario {
namespace {

const std::string teeth = "driveline/final_chain/teeth_rear";

Scenario two_choices() {
    return loaded_car(R"([
        {"id": "gearing", "choose": {"driveline/final_chain/teeth_rear": [27, 29, 31]}},
        {"id": "shell", "choose": {"body/mass": ["300 ± 2 kg", "290 kg"],
                                   "body/drag_area": ["0.6 m2", "0.5 m2"]}},
        {"id": "cooler", "add": {"body/mass": "4 kg"}}])");
}

constexpr UpgradeSet all = 0b111;

std::string why(const std::vector<StatedChoice>& stated) {
    return wanted_choices(two_choices(), all, stated).violation;
}

Wanted wanted(const std::vector<StatedChoice>& stated) {
    const auto found = wanted_choices(two_choices(), all, stated);
    EXPECT_TRUE(found) << found.violation;
    return found ? *found : Wanted{};
}

TEST(Choices, AValueIsFoundAmongThoseOnOffer) {
    EXPECT_EQ(wanted({}), (Wanted{{}, {}, {}}));
    EXPECT_EQ(wanted({{"gearing", "", Given(31.0)}}), (Wanted{2, {}, {}}));
    EXPECT_EQ(wanted({{"gearing", "", Given("29")}}), (Wanted{1, {}, {}}));
    EXPECT_EQ(wanted({{"gearing", teeth, Place{0}}}), (Wanted{0, {}, {}}));
    EXPECT_EQ(wanted({{"shell", "body/drag_area", Given("5000 cm2")}}), (Wanted{{}, {}, 1}));
    EXPECT_EQ(wanted({{"shell", "body/drag_area", Given(0.5)}, {"gearing", "", Given(27.0)}}),
              (Wanted{0, {}, 1}));
}

TEST(Choices, WhatIsNotOnOfferIsRefusedWithWhatIs) {
    EXPECT_EQ(why({{"gearing", "", Given(28.0)}}),
              "\"gearing\" offers 27, 29 and 31 for " + teeth + ", not 28");
    EXPECT_EQ(why({{"gearing", "", Place{3}}}),
              "\"gearing\" offers 27, 29 and 31 for " + teeth + ", and no value number 4");
    EXPECT_NE(why({{"gearing", "", Given("many")}}).find("27, 29 and 31"), std::string::npos);
    EXPECT_EQ(why({{"cooler", "", Given(1.0)}}), "\"cooler\" leaves nothing to choose");
    EXPECT_EQ(why({{"gearing", "body/mass", Given(1.0)}}),
              "\"gearing\" leaves " + teeth + " to choose, not \"body/mass\"");
    EXPECT_EQ(why({{"shell", "", Given(300.0)}}),
              "\"shell\" leaves several values to choose: name each by its address, body/mass and "
              "body/drag_area");
    EXPECT_EQ(why({{"gearing", "", Given(27.0)}, {"gearing", teeth, Given(29.0)}}),
              "\"gearing\" is told to take two values");
}

TEST(Choices, WhatIsWantedIsNotVaried) {
    const auto car = two_choices();
    int asked = 0;
    const auto lightest = [&](const vehicle::Vehicle& vehicle, const Choices&) {
        ++asked;
        return 1000 - vehicle.body.mass - vehicle.body.drag_area;
    };
    EXPECT_EQ(resolve_choice(car, all, lightest, {2, {}, {}}), (Choices{2, 1, 1}));
    EXPECT_EQ(asked, 4);
    EXPECT_EQ(resolve_choice(car, all, lightest, {1, 0, 0}), (Choices{1, 0, 0}));
    const auto none = [](const vehicle::Vehicle&, const Choices&) { return std::nan(""); };
    EXPECT_EQ(resolve_choice(car, all, none, {1, {}, {}}), (Choices{1, 0, 0}));
}

// What is set is known as well as it says, and the margin that is kept follows from that.
TEST(Choices, AnInstalledKnockAnchorIsKnownAsWellAsItSays) {
    const auto car = loaded_car(R"([
        {"id": "listened", "set": {"engine/knock_anchor/octane_number": "88 ± 2"}}])");
    const auto known = [](const vehicle::Vehicle& made) {
        return made.engine.as<engine::Cylinder>()->knock_anchor.known_to;
    };
    EXPECT_NE(known(car.vehicle), 2.0);
    EXPECT_EQ(known(installed(car, 0b1)), 2.0);
}

}  // namespace
}  // namespace windwall::scenario
