// What a drive remembers is felt: each temperature of its state changes what the engine gives or
// how another one goes on.
#include "windwall/solve/drive/motion.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "samples.hpp"

namespace windwall::solve {
namespace {

constexpr double change = 30;  // K

/// At full throttle in gear, at a road speed in the middle of what the vehicle does.
class Pull {
public:
    Pull() {
        EXPECT_TRUE(motion_.set_out(vehicle::Starts::soaked, state));
        state[Layout::road_speed] = 25;
    }
    Moment moment() { return motion_.at({.phase = Phase::driving}, {}, state); }
    const std::vector<DriveNode>& nodes() const { return motion_.layout().nodes; }

    std::vector<double> state;

private:
    Motion motion_{sample::with_every_node()};
};

}  // namespace

TEST(FeltStates, EveryNodeChangesTheTorqueOrAnotherNode) {
    Pull pull;
    const Moment before = pull.moment();
    ASSERT_TRUE(before.answered);
    ASSERT_EQ(pull.nodes().size(), 9u);
    for (std::size_t i = 0; i < pull.nodes().size(); ++i) {
        const std::string& node = pull.nodes()[i].address;
        if (node == "driveline/belt/belt") continue;  // its limit asks for it, nothing else
        double& temperature = pull.state[Layout::first_node + i];
        temperature -= change;
        const Moment after = pull.moment();
        temperature += change;
        double felt = std::abs(after.torque - before.torque) / before.torque;
        for (std::size_t k = 0; k < pull.nodes().size(); ++k)
            if (k != i)
                felt = std::max(felt, std::abs(after.heating[k] - before.heating[k]) / change);
        EXPECT_GT(felt, 1e-4) << node;
    }
}

TEST(FeltStates, ColdOilCostsTorqueAndAColdBlockCoolsTheOil) {
    Pull pull;
    const Moment warm = pull.moment();
    const auto at = [&](const std::string& address) {
        const auto& nodes = pull.nodes();
        const auto found = std::ranges::find(nodes, address, &DriveNode::address);
        return static_cast<std::size_t>(found - nodes.begin());
    };
    const std::size_t oil = at("engine/oil"), block = at("engine/block");
    pull.state[Layout::first_node + oil] -= change;
    EXPECT_LT(pull.moment().torque, 0.999 * warm.torque);
    pull.state[Layout::first_node + oil] += change;
    pull.state[Layout::first_node + block] -= change;
    const Moment cold_block = pull.moment();
    // Two solutions of one point, each as near as the slip of tyres and belt is settled.
    EXPECT_NEAR(cold_block.torque, warm.torque, 1e-5 * warm.torque);
    EXPECT_LT(cold_block.heating[oil], warm.heating[oil] - 1e-3);
}

}  // namespace windwall::solve
