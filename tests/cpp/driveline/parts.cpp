#include "windwall/driveline/part.hpp"

#include <gtest/gtest.h>

using namespace windwall;
using namespace windwall::driveline;

namespace {

struct Rope : Chain {
    static constexpr std::string_view kind = "rope";
};
struct Ungeared {
    static constexpr std::string_view kind = "ungeared", description = "Has no ratio.";
    double inertia = 0;
    Shaft drive(const Shaft& in, GearState) const noexcept { return in; }
    static std::span<const fields::Row> rows() { return {}; }
};
struct Thrower : Clutch {
    Shaft drive(const Shaft& in, GearState) const { return in; }
};

Gearbox four_speed() {
    Gearbox box;
    box.ratios = {3.2, 2.0, 1.45, 1.0};
    return box;
}

}  // namespace

TEST(Part, IsAcceptedWhenCompleteAndRefusedWhenAPieceIsMissing) {
    static_assert(DrivelinePart<Rope>);
    static_assert(!DrivelinePart<Ungeared>, "no gears, no ratio");
    static_assert(!DrivelinePart<Thrower>, "not noexcept");
    EXPECT_EQ(Part(Chain{}).kind(), "chain");
}

TEST(Gearbox, CountsGearsFromNoughtAndStaysInTop) {
    const Gearbox box = four_speed();
    EXPECT_EQ(box.gears(), 4u);
    EXPECT_EQ(box.ratio(0), 3.2);
    EXPECT_EQ(box.ratio(3), 1.0);
    EXPECT_EQ(box.ratio(99), 1.0);
    EXPECT_EQ(Gearbox{}.ratio(0), 1.0);
    EXPECT_EQ(Gearbox{}.gears(), 1u);
}

TEST(Gearbox, LoadsNoTeethInDirectDrive) {
    Gearbox box = four_speed();
    box.drag_torque = box.churning_torque = 0;
    EXPECT_DOUBLE_EQ(box.drive({300, 50}, 3).torque, 50 * box.efficiency);
    box.direct_efficiency = 0.995;
    EXPECT_DOUBLE_EQ(box.drive({300, 50}, 3).torque, 50 * 0.995);
    EXPECT_DOUBLE_EQ(box.drive({300, 50}, 2).torque, 50 * 1.45 * box.efficiency);
}

TEST(Gearbox, ComplainsOfRatiosThatRise) {
    Gearbox box = four_speed();
    EXPECT_FALSE(box.check());
    box.ratios = {1.0, 1.45, 2.0};
    ASSERT_TRUE(box.check());
    EXPECT_EQ(box.check()->key, "ratios");
    box.ratios = {2, 2, 1};
    EXPECT_FALSE(box.check());
}

TEST(Clutch, PassesWhatItHoldsAndNoMore) {
    Clutch clutch;
    EXPECT_EQ(clutch.drive({300, 5000}, 0).torque, 5000);
    EXPECT_FALSE(slips(clutch, {300, 5000}, {}));
    clutch.capacity = 60;
    EXPECT_EQ(clutch.drive({300, 50}, 0).torque, 50);
    EXPECT_FALSE(slips(clutch, {300, 60}, {}));
    EXPECT_TRUE(slips(clutch, {300, 61}, {}));
    EXPECT_TRUE(slips(clutch, {300, -61}, {}));
    EXPECT_EQ(clutch.drive({300, 80}, 0).torque, 60);
    EXPECT_EQ(clutch.drive({300, -80}, 0).torque, -60);
}

// Handbooks of machine design: each shoe is pressed by m r (w^2 - w_0^2) and rubs at the drum's
// radius.
TEST(CentrifugalClutch, HoldsByWhatPressesItsShoes) {
    CentrifugalClutch clutch;
    clutch.engagement_speed = 200;
    clutch.shoe_mass = 0.12;
    clutch.drum_radius = 0.055;
    clutch.shoe_radius = 0.045;
    clutch.shoes = 3;
    clutch.friction = 0.3;
    clutch.self_energising = 1;
    const double pressed = 0.12 * 0.045 * (300.0 * 300 - 200.0 * 200);
    EXPECT_NEAR(clutch.capacity(300), 3 * 0.3 * pressed * 0.055, 1e-9);
    EXPECT_EQ(clutch.capacity(200), 0);
    clutch.self_energising = 1.5;
    EXPECT_NEAR(clutch.capacity(300), 1.5 * 3 * 0.3 * pressed * 0.055, 1e-9);
}

TEST(Chain, GearsByItsTeeth) {
    Chain chain;
    chain.teeth_front = 15;
    chain.teeth_rear = 38;
    EXPECT_DOUBLE_EQ(chain.ratio(0), 38.0 / 15);
    EXPECT_DOUBLE_EQ(chain.speed_ripple(), chain_speed_ripple(15));
}

TEST(Defaults, AreThoseTheSourcesGive) {
    // Burgess and Lodge: 0.96 to 0.99 for the chain; Joachim, Boerner and Kurz: 0.90 to 0.998 for
    // gears. A default that leaves them needs a new source.
    EXPECT_GE(Chain{}.efficiency, 0.96);
    EXPECT_LE(Chain{}.efficiency, 0.99);
    EXPECT_GE(Gearbox{}.efficiency, 0.92);
    EXPECT_LE(Gearbox{}.efficiency, 0.998 * 0.998);
    EXPECT_GE(FinalDrive{}.efficiency, 0.90);
    EXPECT_LE(FinalDrive{}.efficiency, 0.998);
}
