#include "windwall/driveline/train.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::driveline;
using samples::cvt;

namespace {

/// CVT, a box of two gears and a chain.
Train scooter() {
    Gearbox box;
    box.ratios = {2.0, 1.0};
    Chain chain;
    chain.teeth_front = 15;
    chain.teeth_rear = 38;
    return {{"cvt", cvt()}, {"box", box}, {"chain", chain}};
}

}  // namespace

TEST(Variator, GoesFromEndToEndInEqualStepsOfRatio) {
    const Variator made = cvt().variator();
    EXPECT_EQ(made.ratio(0), 2.7);
    EXPECT_EQ(made.ratio(1), 0.8);
    EXPECT_EQ(made.ratio(-1), 2.7);
    EXPECT_NEAR(made.ratio(0.5), std::sqrt(2.7 * 0.8), 1e-15);
    for (const double position : {0.0, 0.2, 0.77, 1.0})
        EXPECT_NEAR(made.position_of(made.ratio(position)), position, 1e-14);
    EXPECT_EQ(made.position_of(9), 0);
    EXPECT_EQ(made.position_of(0.1), 1);
}

TEST(Train, MultipliesAVariatorWithBoxAndChain) {
    const Train train = scooter();
    EXPECT_EQ(gears(train), 2u);
    EXPECT_DOUBLE_EQ(total_ratio(train, {0, 0}), 2.7 * 2 * 38 / 15);
    EXPECT_DOUBLE_EQ(total_ratio(train, {1, 0}), 2.7 * 38 / 15);
    EXPECT_DOUBLE_EQ(total_ratio(train, {1, 1}), 0.8 * 38 / 15);
    EXPECT_DOUBLE_EQ(total_ratio(train, 1), 0.8 * 38 / 15);
}

TEST(Train, SaysWhatItsVariatorHoldsAtTheCrank) {
    EXPECT_EQ(variator(scooter())->held_speed(0.3, 40), 600);
    FinalDrive primary;
    primary.fixed_ratio = 1.5;
    Train train = scooter();
    train.insert(train.begin(), {"primary", primary});
    EXPECT_EQ(variator(train)->held_speed(0.3, 40), 900);
    EXPECT_EQ(variator(train)->low_ratio, 2.7);
    EXPECT_FALSE(variator({{"primary", primary}}));
}

TEST(Train, LeavesOutWhatAVariatorHolds) {
    const Train train = scooter();
    const double chain = 38.0 / 15 * 38 / 15;
    const double behind =
        (cvt().driven_inertia + Gearbox{}.inertia) * 4 * chain + Chain{}.inertia * chain;
    EXPECT_NEAR(inertia_at_wheels(train, {0, 0.3}, Behind::variator), behind, 1e-12);
    const double ratio = cvt().ratio({0, 0.3});
    EXPECT_NEAR(inertia_at_wheels(train, {0, 0.3}),
                behind + cvt().inertia * ratio * ratio * 4 * chain, 1e-12);
}

TEST(BeltCvt, HasTheEfficienciesItsDefaultsStandFor) {
    // (1 - s)(1 - T_loss/T) worked by hand at 1:1 rated, 2.7 rated, 1:1 half and a fifth.
    BeltCvt part = cvt();
    const double unity = part.variator().position_of(1);
    EXPECT_NEAR(part.efficiency({400, 30}, {0, unity}), 0.98 * 0.88, 1e-12);
    EXPECT_NEAR(part.efficiency({400, 30}, {0, 0}), 0.98 * (0.88 - 0.03 * std::log(2.7)), 1e-12);
    EXPECT_NEAR(part.efficiency({400, 15}, {0, unity}), 0.99 * 0.83, 1e-12);
    EXPECT_NEAR(part.efficiency({400, 6}, {0, unity}), 0.996 * 0.68, 1e-12);
    EXPECT_GT(part.efficiency({400, 30}, {0, unity}) - part.efficiency({400, 6}, {0, unity}), 0.1);
    EXPECT_EQ(part.efficiency({400, 0.1}, {0, unity}), 0);
    part.churning_torque = 2;
    EXPECT_LT(part.efficiency({800, 30}, {0, unity}), part.efficiency({200, 30}, {0, unity}));
}

TEST(BeltCvt, PriorsSpreadTheEfficiencyAsWideAsItIsKnown) {
    // 0.86 +- 0.04 rated, the ends 0.04 +- 0.03 lower, 0.70 +- 0.10 at a fifth: common practice.
    const BeltCvt part = cvt();
    const double unity = part.variator().position_of(1);
    const auto spread = [&](const Shaft& in, GearState gear_state) {
        double square = 0;
        for (const fields::Row& row : BeltCvt::rows()) {
            if (row.sigma == 0 || row.key == "churning_torque") continue;
            BeltCvt moved = part;
            const fields::Unit& unit = fields::unit_of(row.measure);
            *static_cast<double*>(row.member.of(&moved)) += samples::si(row.sigma, unit);
            square +=
                std::pow(moved.efficiency(in, gear_state) - part.efficiency(in, gear_state), 2);
        }
        return std::sqrt(square);
    };
    EXPECT_NEAR(spread({400, 30}, {0, unity}), 0.04, 0.005);
    EXPECT_NEAR(spread({400, 6}, {0, unity}), 0.10, 0.02);
    EXPECT_GT(spread({400, 30}, {0, 0}), 0.045);
}

TEST(BeltCvt, SlipsThroughBeyondWhatTheClampHolds) {
    BeltCvt part = cvt();
    EXPECT_FALSE(part.capacity(500, {0, 0.5}));
    part.sheaves = Sheaves{0.27, 0.96179608, 1200, {}, 26 * std::numbers::pi / 180, 0.35};
    ASSERT_FALSE(part.sheaves->check());
    const double most = part.capacity(500, {0, 0}).value();
    const double radius = driving_radius(2.7, 0.27, 0.96179608);
    EXPECT_NEAR(most, 2 * 0.35 * 1200 * radius / std::cos(13 * std::numbers::pi / 180), 1e-9);
    EXPECT_GT(part.capacity(500, {0, 1}), most);
    EXPECT_TRUE(slips(part, {500, most * 1.01}, {0, 0}));
    EXPECT_FALSE(slips(part, {500, most * 0.99}, {0, 0}));
    // What is left over is heat: no more torque out, all the more loss.
    const Shaft limit{500, most}, more{500, most + 10};
    EXPECT_EQ(part.drive(limit, {0, 0}).torque, part.drive(more, {0, 0}).torque);
    EXPECT_NEAR(more.power() - part.drive(more, {0, 0}).power(),
                limit.power() - part.drive(limit, {0, 0}).power() + 5000, 1e-6);
    // The slip rises steeply from four fifths of the capacity on.
    const auto slip = [&](double share) { return part.slip_share({500, share * most}, {0, 0}); };
    EXPECT_GT(slip(1.0) - slip(0.9), 3 * (slip(0.8) - slip(0.7)));
    part.slip_torque = 12;
    EXPECT_EQ(part.capacity(500, {0, 1}).value(), 12);
}

TEST(BeltCvt, ComplainsOfEndsThatAreSwapped) {
    BeltCvt part = cvt();
    EXPECT_FALSE(part.check());
    part.high_ratio = 3;
    ASSERT_TRUE(part.check());
    EXPECT_EQ(part.check()->key, "high_ratio");
}

TEST(Belt, CreepsAndSlipsUnlessItHasTeeth) {
    Belt belt;
    belt.diameter_front = 0.1;
    belt.diameter_rear = 0.2;
    EXPECT_FALSE(belt.capacity(300));
    EXPECT_NEAR(belt.drive({300, 20}, 0).speed, 150 * 0.99, 1e-12);
    EXPECT_NEAR(belt.drive({300, -20}, 0).speed, 150 / 0.99, 1e-12);
    belt.tension = 300;
    const double most = belt.capacity(300).value();
    EXPECT_GT(belt.capacity(0), most);  // the belt's own mass
    EXPECT_EQ(belt.capacity(5000).value(), 0);
    EXPECT_EQ(belt.drive({300, 2 * most}, 0).torque, belt.drive({300, most}, 0).torque);
    belt.section = BeltSection::flat;
    EXPECT_LT(belt.capacity(300), most);
    belt.section = BeltSection::toothed;
    EXPECT_FALSE(belt.capacity(300));
    EXPECT_EQ(belt.drive({300, 20}, 0).speed, 150);
}

TEST(Train, AccountsForEveryWattOfABeltThatSlips) {
    Train train = scooter();
    samples::Dice dice(7);
    for (int i = 0; i < 1000; ++i) {
        const Shaft crank = samples::shaft(dice);
        std::array<double, 3> losses{};
        const Shaft wheels = drive(train, crank, {1, dice.between(0, 1)}, losses);
        const double lost = std::accumulate(losses.begin(), losses.end(), 0.0);
        EXPECT_NEAR(crank.power(), wheels.power() + lost, 1e-9 * (1 + std::abs(crank.power())));
        for (const double each : losses)
            EXPECT_GE(each, -1e-9);
    }
}
