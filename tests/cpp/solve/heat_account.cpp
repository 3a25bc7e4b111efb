// The heat account closes with the exhaust that the engine makes of its own two ends.
#include "windwall/solve/results/account.hpp"

#include <gtest/gtest.h>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

/// Every kind of path and engine that gives or takes heat.
std::vector<Vehicle> vehicles() {
    std::vector<Vehicle> all{sample::cyclecar(), sample::cooled_cyclecar(), sample::unblown()};
    Vehicle warm = sample::cooled_cyclecar();  // intake air from under the bodywork
    warm.engine_bay.intake_share = 0.6;
    all.push_back(warm);
    Vehicle round = sample::cooled_cyclecar();
    charge::Bypass bypass;
    bypass.area = 60e-6;
    bypass.opened_by = charge::OpenedBy::hand;
    bypass.hand_opening = 0.7;
    round.charge_path.push_back({"bypass", bypass});
    all.push_back(round);
    charge::EvaporativeInjection nozzle;
    nozzle.methanol = 0.5;
    nozzle.rated_flow = 3e-6;
    Vehicle wet = sample::cooled_cyclecar();
    wet.charge_path.insert(wet.charge_path.begin() + 3, {"nozzle", nozzle});
    all.push_back(wet);
    engine::TorqueCurve curve;
    curve.table.column = {{2000 * rpm, 4000 * rpm, 6000 * rpm}, {40, 48, 42}};
    curve.displacement = 624e-6;
    curve.stroke = 68.8e-3;
    curve.rev_limit = 6000 * rpm;
    Vehicle measured = sample::unblown();
    measured.engine = engine::Engine(curve);
    all.push_back(measured);
    return all;
}

TEST(HeatAccount, ClosesWithTheEnginesOwnExhaust) {
    for (const Vehicle& car : vehicles()) {
        VehicleSolver solver(car);
        for (const double speed : {3000 * rpm, 4500 * rpm, 5600 * rpm}) {
            const FullThrottlePoint full_throttle = solver.at({speed, 2});
            ASSERT_TRUE(full_throttle.point.outcome.answered());
            const Account account =
                heat_account(solver.point_solver().balance(), full_throttle).account;
            EXPECT_NEAR(account.gap(), 0, 1e-9 * account.total.watts) << car.charge_path.size();
        }
    }
}

// It is no remainder: whatever one side alone miscounts is the gap.
TEST(HeatAccount, ShowsWhatIsMiscounted) {
    const Vehicle car = sample::cooled_cyclecar();
    VehicleSolver solver(car);
    FullThrottlePoint full_throttle = solver.at({4500 * rpm, 2});
    const auto gap = [&] {
        return heat_account(solver.point_solver().balance(), full_throttle).account.gap();
    };
    full_throttle.point.work.pumping += 100;
    EXPECT_NEAR(gap(), -100, 1e-3);
    full_throttle.point.work.pumping -= 100;
    full_throttle.point.work.rubbing += 50;
    EXPECT_NEAR(gap(), -50, 1e-3);
    full_throttle.point.work.rubbing -= 50;
    full_throttle.point.work.indicated += 70;
    EXPECT_NEAR(gap(), 70, 1e-3);
}

}  // namespace
}  // namespace windwall::solve
