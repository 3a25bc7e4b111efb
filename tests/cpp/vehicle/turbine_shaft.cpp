// The seam for what joins the balance from outside: a turbine's shaft, which the core knows nothing
// of, brings two unknowns and two residuals and is solved with the air.
#include "windwall/media/orifice.hpp"
#include "windwall/numerics/newton.hpp"
#include "windwall/vehicle/balance/balance.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "solve/samples.hpp"

namespace windwall::vehicle {
namespace {

using sample::rpm;

// A burnt gas of constant heat capacity, enough for a toy.
constexpr double R = 287, gamma = 1.33, cp = R * gamma / (gamma - 1);
constexpr double nozzle_area = 2.2e-4;  // m2, effective
constexpr double turbine_efficiency = 0.65, bearings = 0.95;

/// A turbine behind the exhaust valves turns the compressor at `part` of the charge path.
class TurbineShaft : public Block {
public:
    explicit TurbineShaft(std::size_t part) : part_(part) {}

    void declare(Unknowns& unknowns) override {
        speed_ = unknowns.declare({"turbine", "logarithm of the speed", std::log(11000.0)});
        pressure_ = unknowns.declare({"turbine", "exhaust pressure", std::log(1.6)});
    }
    void act(Balance& balance, std::span<const double> x) const noexcept override {
        balance.turn(part_, std::exp(x[speed_]));
        balance.set_exhaust_pressure(balance.surroundings().ambient_pressure *
                                     std::exp(x[pressure_]));
    }
    void residuals(const Balance& balance, std::span<const double>,
                   std::span<double> r) const noexcept override {
        r[speed_] = power(balance) * bearings / compressor(balance) - 1;
        r[pressure_] = swallowed(balance) / gas(balance).flow - 1;
    }

    double power(const Balance& balance) const noexcept {
        const double left = std::pow(silencer(balance) / before(balance), (gamma - 1) / gamma);
        const engine::ExhaustGas exhaust = gas(balance);
        return exhaust.flow * cp * exhaust.temperature * turbine_efficiency * (1 - left);
    }
    double swallowed(const Balance& balance) const noexcept {
        return media::orifice_flow(nozzle_area, before(balance), gas(balance).temperature,
                                   silencer(balance), R, gamma);
    }
    double compressor(const Balance& balance) const noexcept {
        return balance.stations()[part_].compression.shaft_power;
    }
    engine::ExhaustGas gas(const Balance& balance) const noexcept {
        const auto& engine = *balance.vehicle().engine.as<engine::Cylinder>();
        const engine::Intake intake = balance.intake(balance.manifold());
        const double retard = engine.choose_spark(intake, balance.vehicle().fuel).retard;
        const media::Fuel& fuel = balance.vehicle().fuel;
        return engine.exhaust_gas(intake, fuel, engine.work(intake, fuel, retard));
    }
    double before(const Balance& balance) const noexcept {
        return *balance.intake(balance.manifold()).exhaust_pressure;
    }
    /// What the pipes behind the turbine leave above the weather.
    double silencer(const Balance& balance) const noexcept {
        engine::Intake intake = balance.intake(balance.manifold());
        intake.exhaust_pressure.reset();
        const auto& engine = *balance.vehicle().engine.as<engine::Cylinder>();
        return engine.exhaust_pressure(intake, balance.vehicle().fuel);
    }

private:
    std::size_t part_, speed_{}, pressure_{};
};

/// The cyclecar with a compressor where its blower was.
Vehicle turbocharged() {
    Vehicle car = sample::cooled_cyclecar();
    charge::MappedCompressor compressor;
    compressor.impeller_diameter = 40e-3;
    compressor.drive_ratio = 1;  // turned by the shaft itself
    car.charge_path[2] = {"compressor", compressor};
    return car;
}

struct Solved {
    numerics::NewtonResult result;
    std::array<double, Unknowns::most> x{};
};

Solved solve(Balance& balance) {
    Solved made;
    const std::span<double> x(made.x.data(), balance.unknowns().size());
    balance.guess(x);
    made.result = numerics::solve_newton(
        [&](std::span<const double> at, std::span<double> r) { balance.residuals(at, r); }, x,
        {1e-11, 400, balance.unknowns().scales(), balance.unknowns().step_limits()});
    return made;
}

TEST(TurbineShaft, IsSolvedWithTheAirFromOutsideTheCore) {
    const Vehicle car = turbocharged();
    Balance balance(car);
    const std::size_t air = balance.unknowns().size();
    TurbineShaft shaft(2);
    balance.attach(shaft);
    ASSERT_EQ(balance.unknowns().size(), air + 2);
    EXPECT_EQ(balance.unknowns()[air].owner, "turbine");
    balance.hold({5500 * rpm, 25, 1});
    ASSERT_EQ(solve(balance).result.status, numerics::NewtonStatus::converged);

    // Its power balance closes, from the stations and the exhaust alone.
    EXPECT_GT(shaft.compressor(balance), 500);
    EXPECT_NEAR(shaft.power(balance) * bearings / shaft.compressor(balance), 1, 1e-9);
    EXPECT_NEAR(shaft.swallowed(balance) / shaft.gas(balance).flow, 1, 1e-9);
    // It lifts both ends of the engine, and the crank has no part in it.
    EXPECT_GT(balance.manifold().pressure, 1.1 * balance.surroundings().ambient_pressure);
    EXPECT_GT(shaft.before(balance), shaft.silencer(balance));
    EXPECT_FALSE(balance.stations()[2].by_crank);
}

// What stands behind the valves holds the engine back: the same path with a smaller nozzle.
TEST(TurbineShaft, ExhaustPressureReachesTheEngine) {
    const Vehicle car = sample::cooled_cyclecar();
    Balance balance(car);
    balance.hold({5500 * rpm, 25, 1});
    solve(balance);
    const double freely = balance.manifold().dry_air;
    engine::Intake intake = balance.intake(balance.manifold());
    const auto& engine = *car.engine.as<engine::Cylinder>();
    const double pumping = engine.work(intake, car.fuel, 0).pumping;
    intake.exhaust_pressure = 250e3;
    EXPECT_LT(engine.gas_demand(intake, car.fuel), 0.97 * freely);
    EXPECT_GT(engine.work(intake, car.fuel, 0).pumping, pumping);
}

TEST(TurbineShaft, LeavesNothingBehindWhenDetached) {
    const Vehicle car = sample::cooled_cyclecar();
    Balance balance(car);
    const std::size_t air = balance.unknowns().size();
    TurbineShaft shaft(2);
    balance.attach(shaft);
    balance.detach();
    EXPECT_EQ(balance.unknowns().size(), air);
    balance.hold({5500 * rpm, 25, 1});
    EXPECT_FALSE(balance.intake(balance.manifold()).exhaust_pressure.has_value());
    EXPECT_EQ(solve(balance).result.status, numerics::NewtonStatus::converged);
}

}  // namespace
}  // namespace windwall::vehicle
