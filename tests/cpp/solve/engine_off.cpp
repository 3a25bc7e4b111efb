// A vehicle that stands with its engine off cools down: metals share their heat and give it to the
// air, and nothing that is as cold as the day gets warmer.
#include "windwall/solve/drive/motion.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "samples.hpp"

namespace windwall::solve {
namespace {

class Parked {
public:
    explicit Parked(const vehicle::Vehicle& car, vehicle::Starts starts = vehicle::Starts::soaked)
        : motion_(car) {
        EXPECT_TRUE(motion_.set_out(starts, state_));
    }
    double& temperature(const std::string& address) {
        return state_[Layout::first_node + place(address)];
    }
    /// W into a node.
    double flow(const std::string& address, Phase phase = Phase::engine_off) {
        const Moment& now = motion_.at({.phase = phase}, {}, state_);
        EXPECT_TRUE(now.answered);
        return now.heating[place(address)] * nodes()[place(address)].heat_capacity;
    }
    const std::vector<DriveNode>& nodes() const { return motion_.layout().nodes; }
    double day() const { return motion_.vehicle().day.temperature; }
    void open_hood() { motion_.open_hood(true); }

private:
    std::size_t place(const std::string& address) const {
        const auto found = std::ranges::find(nodes(), address, &DriveNode::address);
        EXPECT_NE(found, nodes().end()) << address;
        return static_cast<std::size_t>(found - nodes().begin());
    }

    Motion motion_;
    std::vector<double> state_;
};

}  // namespace

// Neither a coolant, nor what a blower is bolted to, nor the air under the bodywork is a source.
TEST(EngineOff, WhatIsAsColdAsTheDayStaysSo) {
    for (const auto by : {engine::CoolingBy::fan, engine::CoolingBy::liquid}) {
        Parked car(sample::with_every_node(by), vehicle::Starts::cold);
        EXPECT_EQ(car.nodes().size(), 9U);
        for (const DriveNode& node : car.nodes())
            EXPECT_NEAR(car.flow(node.address), 0, 1e-9) << node.address;
    }
}

// What was warmer than the air around it: walls and cases stand near that already.
TEST(EngineOff, WhatIsHotCools) {
    for (const auto by : {engine::CoolingBy::fan, engine::CoolingBy::liquid}) {
        Parked car(sample::with_every_node(by));
        for (const std::string node :
             {"engine/head", "engine/oil", "charge_path/cooler/core", "driveline/belt/belt"})
            EXPECT_LT(car.flow(node), -1) << node;
        car.temperature("charge_path/blower/case") = 400;
        EXPECT_LT(car.flow("charge_path/blower/case"), -100);
    }
}

// Fins in air that rises by itself have 5 to 8 W/(m2 K), 4 to 8 W/K for a head like this; from
// memory. A fan that stands does not count, nor does a coolant that is not pumped.
TEST(EngineOff, AHeadGivesItsHeatToAirThatRises) {
    for (const auto by : {engine::CoolingBy::fan, engine::CoolingBy::liquid}) {
        Parked car(sample::with_every_node(by));
        const double over = car.temperature("engine/head") - car.temperature("under_hood/air");
        const double per_kelvin = -car.flow("engine/head") / over;
        EXPECT_GT(per_kelvin, 4);
        EXPECT_LT(per_kelvin, 8);
        car.temperature("under_hood/air") += 20;
        EXPECT_NEAR(-car.flow("engine/head") / (over - 20), per_kelvin, 1e-9);
    }
}

// What the oil gives arrives in the block, which gives the rest to the air.
TEST(EngineOff, OilWarmsTheBlock) {
    Parked car(sample::with_every_node());
    car.temperature("engine/block") = car.temperature("under_hood/air");
    EXPECT_LT(car.flow("engine/oil"), -100);
    EXPECT_NEAR(car.flow("engine/block"), -car.flow("engine/oil"), 1e-9);
    car.temperature("engine/block") = car.temperature("engine/oil") + 10;
    EXPECT_GT(car.flow("engine/oil"), 1);
    EXPECT_LT(car.flow("engine/block"), -car.flow("engine/oil") - 1);
}

// A hot head goes on heating the air around it, which leaves through an open hood.
TEST(EngineOff, TheAirAroundAHotHeadStaysWarm) {
    const vehicle::Vehicle made = sample::with_every_node();
    Parked car(made);
    double& air = car.temperature("under_hood/air");
    air = car.day() + made.engine_bay.rise_at(0);
    EXPECT_NEAR(car.flow("under_hood/air"), 0, 1e-3);
    car.temperature("engine/head") += 40;  // no more than the stated rise
    EXPECT_NEAR(car.flow("under_hood/air"), 0, 1e-3);
    car.temperature("engine/head") -= 80;
    EXPECT_LT(car.flow("under_hood/air"), -100);
    car.open_hood();
    EXPECT_LT(car.flow("under_hood/air"), -100);
    air = car.day() + 1;
    EXPECT_GT(car.flow("under_hood/air"), 100);
    car.temperature("engine/head") = car.day();
    EXPECT_LT(car.flow("under_hood/air"), -1);
}

// While it runs too: the air waits for the head, and has its stated rise where the head is at rest.
TEST(EngineOff, AnEngineThatIsStillColdWarmsNoAir) {
    Parked cold(sample::with_every_node(), vehicle::Starts::cold);
    EXPECT_NEAR(cold.flow("under_hood/air", Phase::standing), 0, 1e-6);
    Parked idling(sample::with_every_node(), vehicle::Starts::idling);
    EXPECT_NEAR(idling.flow("under_hood/air", Phase::standing), 0, 0.1);
    idling.temperature("engine/head") += 10;
    EXPECT_NEAR(idling.flow("under_hood/air", Phase::standing), 0, 0.1);
    idling.temperature("engine/head") -= 20;
    EXPECT_LT(idling.flow("under_hood/air", Phase::standing), -10);
}

// A blower that is bolted to a cold block is not warmed by it, one on a hot block as stated.
TEST(EngineOff, ACaseIsNotWarmedByAColdBlock) {
    Parked car(sample::with_every_node());
    const double hot = car.flow("charge_path/blower/case");
    car.temperature("engine/block") = car.day();
    const double cold = car.flow("charge_path/blower/case");
    EXPECT_LT(cold, hot - 20);
    car.temperature("engine/block") = 500;
    const double hotter = car.flow("charge_path/blower/case");
    EXPECT_NEAR(cold + charge::PositiveBlower{}.mount_conductance *
                           (charge::PositiveBlower{}.mount_temperature - car.day()),
                hotter, 1e-9);
}

TEST(EngineOff, ABeltThatStandsCoolsSlowly) {
    Parked car(sample::with_every_node());
    const double over = car.temperature("driveline/belt/belt") - car.temperature("under_hood/air");
    EXPECT_NEAR(car.flow("driveline/belt/belt"), -0.1 * driveline::BeltCvt{}.to_air * over, 1e-6);
}

}  // namespace windwall::solve
