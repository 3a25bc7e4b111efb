// An engine from its measured torque.

#include "windwall/media/power_correction.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engines.hpp"

namespace windwall::engine {
namespace {

static_assert(EngineKind<TorqueCurve> && !Anchored<TorqueCurve> && Anchored<Cylinder>);

TorqueCurve measured() {
    TorqueCurve engine;
    engine.table.column = {{2000 * rpm, 4000 * rpm, 6000 * rpm}, {36, 40, 30}};
    engine.displacement = 499e-6;
    engine.stroke = 0.084;
    engine.rev_limit = 6500 * rpm;
    return engine;
}

Intake on(const TorqueCurve& engine, double speed, double pressure, double temperature) {
    Intake intake = intake_at(speed, pressure, temperature, pressure);
    intake.charge.dry_air = engine.gas_demand(intake, {});
    return intake;
}

TEST(TorqueCurve, GivesWhatWasMeasuredOnItsDay) {
    const TorqueCurve engine = measured();
    for (const auto& [speed, torque] : {std::pair{2000.0, 36.0}, {3000.0, 38.0}, {6000.0, 30.0}}) {
        const Intake intake = on(engine, speed * rpm, 99e3, 298.15);
        EXPECT_NEAR(engine.work(intake, {}, 0).torque(), torque, 1e-9);
    }
    EXPECT_TRUE(engine.validity(on(engine, 3000 * rpm, 99e3, 298.15), {}, 0).all());
    EXPECT_FALSE(engine.validity(on(engine, 6200 * rpm, 99e3, 298.15), {}, 0).all());
}

// Other days by the factor of SAE J1349, 1990 form; its root of 273 where 273.15 stands here.
TEST(TorqueCurve, OtherDaysByJ1349) {
    const TorqueCurve engine = measured();
    for (const auto& [pressure, celsius] : {std::pair{95e3, 35.0}, {85e3, 15.0}, {101.3e3, 15.0}}) {
        const double T = celsius + 273.15;
        const double torque = engine.work(on(engine, 4000 * rpm, pressure, T), {}, 0).torque();
        EXPECT_NEAR(torque * media::j1349_factor(pressure, T), 40, 0.15) << pressure;
    }
}

TEST(TorqueCurve, NetGrossAndWheels) {
    TorqueCurve engine = measured();
    engine.measured_at = MeasuredAt::crank_gross;
    EXPECT_NEAR(engine.net_torque(4000 * rpm), 36, 1e-12);
    engine.measured_at = MeasuredAt::wheels;
    EXPECT_NEAR(engine.net_torque(4000 * rpm), 40 / 0.88, 1e-12);
}

TEST(TorqueCurve, FlowsFollowFromEfficiencyAndLambda) {
    const TorqueCurve engine = measured();
    const Intake intake = on(engine, 4000 * rpm, 99e3, 298.15);
    const Work work = engine.work(intake, {}, 0);
    EXPECT_NEAR(work.fuel_power, 40 * 4000 * rpm / 0.25, 1e-6);
    EXPECT_NEAR(work.fuel_flow * 14.604 * 0.88, intake.charge.dry_air, 1e-12);
    EXPECT_NEAR(work.power(), 40 * 4000 * rpm, 1e-6);
    // Half the air leaves less than half the power: friction stays.
    Intake half = intake;
    half.charge.dry_air /= 2;
    EXPECT_NEAR(engine.work(half, {}, 0).torque(), 40 * (0.5 / 0.85 - 0.15 / 0.85), 1e-9);
    EXPECT_GT(engine.volumetric_efficiency(intake, {}), 0.5);
    EXPECT_LT(engine.volumetric_efficiency(intake, {}), 1.2);
}

// Of a four-stroke: 4 pi times the torque over the displacement.
TEST(TorqueCurve, HasTheMeanPressuresOfItsTorque) {
    const TorqueCurve engine = measured();
    const Work work = engine.work(on(engine, 4000 * rpm, 99e3, 298.15), {}, 0);
    EXPECT_NEAR(work.brake_mean_pressure, 4 * std::numbers::pi * 40 / 499e-6, 1e-3);
    EXPECT_NEAR(work.indicated_mean_pressure - work.rubbing_mean_pressure, work.brake_mean_pressure,
                1e-6);
    EXPECT_NEAR(work.rubbing_mean_pressure / work.indicated_mean_pressure, 0.15, 1e-12);
}

TEST(TorqueCurve, SaysNothingOfKnockAndHeat) {
    const TorqueCurve engine = measured();
    const Intake intake = on(engine, 4000 * rpm, 99e3, 298.15);
    EXPECT_FALSE(engine.choose_spark(intake, {}).modelled);
    EXPECT_TRUE(engine.choose_spark(intake, {}).by_spark);
    EXPECT_FALSE(engine.integral_requirement(intake, {}, 0));
    EXPECT_FALSE(engine.temperatures(intake, {}).known);
}

TEST(TorqueCurve, FiniteEverywhere) {
    const TorqueCurve engine = measured();
    for (const double speed : {0.0, 1e-3, 1.0, 60.0, 400.0, 1500.0})
        for (const double flow : {1e-9, 1e-3, 0.3}) {
            Intake intake = intake_at(speed, 60e3, 300);
            intake.charge.dry_air = flow;
            EXPECT_TRUE(std::isfinite(engine.gas_demand(intake, {})));
            EXPECT_TRUE(std::isfinite(engine.volumetric_efficiency(intake, {})));
            EXPECT_TRUE(std::isfinite(engine.work(intake, {}, 0).torque()));
        }
}

TEST(TorqueCurve, ComplainsOfSpeedsThatDoNotRise) {
    TorqueCurve engine = measured();
    EXPECT_FALSE(engine.check());
    engine.table.column[0][1] = 2000 * rpm;
    EXPECT_TRUE(engine.check());
}

TEST(StatedEfficiency, ReplacesTheModel) {
    Cylinder engine = single_499();
    engine.breathing.stated_efficiency = 0.85;
    for (const double pressure : {60e3, 100e3, 180e3})
        for (const double temperature : {280.0, 340.0, 420.0})
            EXPECT_EQ(engine.volumetric_efficiency(intake_at(300, pressure, temperature), {}),
                      0.85);
}

}  // namespace
}  // namespace windwall::engine
