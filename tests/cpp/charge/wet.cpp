// Liquid on its way through the charge path: put in, evaporated as far as it comes, carried on.
#include "windwall/media/drops.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/humid_air.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <gtest/gtest.h>

#include "allocations.hpp"
#include "samples.hpp"
#include "wet_samples.hpp"

using namespace windwall;
using namespace windwall::charge;

namespace {

constexpr double rpm = std::numbers::pi / 30;

Duct straight(double length) {
    Duct duct;
    duct.length = length;
    duct.bore = 0.038;
    duct.bend_angle = 0;
    duct.conductance = 0;
    return duct;
}

PositiveBlower roots() {
    PositiveBlower made;
    made.displacement = 220e-6;
    made.drive_ratio = 1;
    made.leak_area = 0;
    made.friction_torque = 0;
    made.case_conductance = 0;
    made.mount_conductance = 0;
    return made;
}

}  // namespace

TEST(EvaporativeInjection, KnowsWhichHalfAndHalfIsMeant) {
    EvaporativeInjection part = blend_nozzle();
    part.blend_by = BlendBy::mass;
    EXPECT_DOUBLE_EQ(part.blend()[1], 0.5);
    part.blend_by = BlendBy::volume;
    EXPECT_NEAR(part.blend()[1], 787.0 / (787 + 997), 1e-12);
    EXPECT_NEAR(part.blend_density(), (787.0 + 997) / 2, 1e-9);
    part.methanol = 0.6;
    part.ethanol = 0.41;
    EXPECT_TRUE(part.check());
}

TEST(EvaporativeInjection, FlowsWithTheRootOfThePressureAcrossItsNozzle) {
    EvaporativeInjection part = blend_nozzle();
    part.methanol = 0;
    const auto flow = [&](double pressure) {
        return part.spray(humid(pressure, 330, 0.025), day()).flow / 997 * 60e6;
    };
    EXPECT_NEAR(flow(100e3), 300, 1e-6);
    EXPECT_NEAR(flow(200e3) / 3, 92.58, 0.01);  // 7 bar of pump against 1 bar of boost
    EXPECT_NEAR(flow(40e3) / 3, 104.2, 0.05);
    part.boost_referenced = true;
    EXPECT_NEAR(flow(200e3), 300, 1e-6);
    // The same jet lets more volume of a lighter liquid through, and less mass.
    part.methanol = 1;
    EXPECT_NEAR(part.spray(humid(200e3, 330, 0.025), day()).flow,
                300e-6 / 60 * std::sqrt(787.0 * 997), 1e-9);
}

TEST(EvaporativeInjection, ANozzleFlowsByTheRootAndNeverBackwards) {
    EXPECT_DOUBLE_EQ(nozzle_flow(5e-6, 2.8e6, 7e5), 1e-5);
    EXPECT_DOUBLE_EQ(nozzle_flow(5e-6, 7e5, 7e5), 5e-6);
    EXPECT_EQ(nozzle_flow(5e-6, -1e5, 7e5), 0);
}

// Half water and half methanol by mass has half the tension and the viscosity of each.
TEST(EvaporativeInjection, MakesTheDropsOfItsBlend) {
    using media::Vapour;
    EvaporativeInjection part = blend_nozzle();
    part.blend_by = BlendBy::mass;
    const media::Stream in = humid(150e3, 330, 0.025);
    const Spray made = part.spray(in, day());
    const auto half = [](double (*of)(Vapour) noexcept) {
        return (of(Vapour::water) + of(Vapour::methanol)) / 2;
    };
    const double diameter =
        media::sauter_diameter(half(media::surface_tension), half(media::liquid_viscosity),
                               made.flow, made.pressure_difference, in.density());
    EXPECT_NEAR(made.drop_diameter / (part.drop_size_factor * diameter), 1, 1e-12);
}

TEST(EvaporativeInjection, StartsAtItsBoostWithoutAStep) {
    EvaporativeInjection part = blend_nozzle();
    part.starts_at = 30e3;
    // The nozzle stands ahead of the blower, and the switch reads behind it.
    const auto flow = [&](double gauge) {
        charge::Surroundings around = day();
        around.sensed_pressure = 100e3 + gauge;
        return part.spray(humid(96e3, 330, 0.025), around).flow;
    };
    EXPECT_EQ(flow(30e3), 0);
    EXPECT_EQ(part.outlet(humid(120e3, 330, 0.025), day()).liquid_share(), 0);
    EXPECT_GT(flow(36e3), 0);
    EXPECT_GT(flow(35e3), 0.9 * flow(36e3));
    for (double gauge = 29e3; gauge < 36e3; gauge += 10)
        EXPECT_LT(std::abs(flow(gauge + 10) - flow(gauge)), 0.005 * flow(36e3));
}

TEST(EvaporativeInjection, CountsFromVacuumWhereItsSwitchDoes) {
    EvaporativeInjection part = blend_nozzle();
    part.starts_at_absolute = 120e3;
    charge::Surroundings around = day();
    around.sensed_pressure = 122e3;
    const double there = part.spray(humid(96e3, 330, 0.025), around).running;
    EXPECT_GT(there, 0);
    EXPECT_LT(there, 1);
    EXPECT_NEAR(*part.spray(humid(96e3, 330, 0.025), around).above_start, 2e3, 1e-9);
    around.ambient_pressure -= 10e3;  // another day, the same switch
    EXPECT_EQ(part.spray(humid(96e3, 330, 0.025), around).running, there);
    part.starts_at = 20e3;
    ASSERT_TRUE(part.check());
    EXPECT_EQ(part.check()->key, "starts_at_absolute");
}

TEST(EvaporativeInjection, SiphonsUnderVacuumUnlessAValveHoldsIt) {
    EvaporativeInjection part = blend_nozzle();
    part.methanol = 0;
    part.starts_at = 30e3;
    const auto vacuum = humid(35e3, 330, 0.01);
    EXPECT_EQ(part.spray(vacuum, day()).flow, 0);
    part.check_valve = false;
    const auto drawn = part.spray(vacuum, day());
    EXPECT_NEAR(drawn.flow / 997 * 60e6 / 3, 30.5, 0.05);
    EXPECT_EQ(drawn.siphoned, drawn.flow);
    EXPECT_EQ(part.spray(humid(120e3, 330, 0.01), day()).flow, 0);
}

TEST(EvaporativeInjection, PulsesLessItsDeadTime) {
    EXPECT_NEAR(4 * valve_open_share(0.10, 0.05, 2e-3), 0.24, 1e-12);
    EXPECT_NEAR(4 * valve_open_share(0.25, 0.05, 2e-3), 0.84, 1e-12);
    EXPECT_NEAR(4 * valve_open_share(0.95, 0.05, 2e-3), 3.64, 1e-12);
    EXPECT_EQ(valve_open_share(0.03, 0.05, 2e-3), 0);
    EvaporativeInjection part = blend_nozzle();
    const auto in = humid(150e3, 330, 0.025);
    const double whole = part.spray(in, day()).flow;
    part.duty = 0.5;
    EXPECT_NEAR(part.spray(in, day()).flow, 0.46 * whole, 1e-15);
}

TEST(EvaporativeInjection, SaysWhenItDribbles) {
    EvaporativeInjection part = blend_nozzle();
    EXPECT_TRUE(part.spray(humid(150e3, 330, 0.025), day()).atomises);
    part.pump_pressure = 5e5;
    EXPECT_FALSE(part.spray(humid(200e3, 330, 0.025), day()).atomises);
}

TEST(EvaporativeInjection, PutsTheLiquidInAtItsOwnTemperature) {
    EvaporativeInjection part = blend_nozzle();
    part.liquid_temperature = 278.15;
    const auto in = humid(150e3, 363, 0.025);
    const auto out = part.outlet(in, day());
    EXPECT_NEAR(out.liquid_share() * 0.025, part.spray(in, day()).flow, 2e-6);
    EXPECT_NEAR(out.film_share, part.wall_share, 1e-12);
    EXPECT_LT(out.temperature, blend_nozzle().outlet(in, day()).temperature);
    const double brought =
        part.blend()[0] * media::liquid_enthalpy(media::Vapour::water, 278.15) +
        part.blend()[1] * media::liquid_enthalpy(media::Vapour::methanol, 278.15);
    EXPECT_NEAR(out.fed, out.liquid_share() * brought, 1e-6 * std::abs(out.fed));
}

TEST(WetCharge, CarriesOnWhatDoesNotEvaporate) {
    // 35 ms in a pipe let a tenth of 50 um water drops evaporate; the rest goes on, smaller.
    EvaporativeInjection part = blend_nozzle();
    part.methanol = 0;
    part.wall_share = 0;
    part.drop_diameter = 50e-6;
    const auto sprayed = part.outlet(humid(160e3, 363, 0.025), day());
    const auto behind = straight(0.5).outlet(sprayed, day());
    const double left = behind.liquid_share() / sprayed.liquid_share();
    EXPECT_GT(left, 0.85);
    EXPECT_LT(left, 0.95);
    EXPECT_NEAR(behind.drop_diameter, 50e-6 * std::cbrt(left), 1e-9);
    const auto further = straight(0.5).outlet(behind, day());
    EXPECT_LT(further.liquid_share(), behind.liquid_share());
    EXPECT_LT(further.temperature, behind.temperature);
    EXPECT_GT(further.liquid_share(), 0.7 * sprayed.liquid_share());
    Throttle throttle;
    throttle.bore = 0.04;
    Plenum plenum;
    plenum.volume = 2e-3;
    EXPECT_GT(plenum.outlet(further, day()).liquid_share(), 0);
}

TEST(WetCharge, LandsOnTheWallsOfBends) {
    EvaporativeInjection part = blend_nozzle();
    part.wall_share = 0;
    part.drop_diameter = 50e-6;
    const auto sprayed = part.outlet(humid(160e3, 363, 0.025), day());
    Duct bent = straight(0.5);
    bent.bend_angle = std::numbers::pi / 2;
    const auto behind = bent.outlet(sprayed, day());
    EXPECT_GT(behind.film_share, 0.99);
    EXPECT_LT(sprayed.liquid_share() - behind.liquid_share(), 0.01 * sprayed.liquid_share());
    part.drop_diameter = 5e-6;
    EXPECT_LT(bent.outlet(part.outlet(humid(160e3, 363, 0.025), day()), day()).film_share, 0.4);
}

TEST(WetCharge, EvaporatesInTheBlowerWithTheWorkItGets) {
    // 10 g of water in a kilogram of saturated air: cold, a third evaporates at most; behind the
    // blower nearly all of it can.
    const auto saturated = media::adiabatic_equilibrium(
        media::with_liquid(humid(101325, 298.15, 0.0243), {0.01, 0, 0, 0}, 298.15, 50e-6));
    auto blower = roots();
    Surroundings surroundings = day();
    surroundings.drive_speed = 7000 * rpm;
    blower.evaporated_inside = 0;
    const auto dry = blower.compress(saturated, 156.8e3, surroundings);
    EXPECT_EQ(dry.outlet.liquid_share(), saturated.liquid_share());
    blower.evaporated_inside = 1;
    const auto wet = blower.compress(saturated, 156.8e3, surroundings);
    EXPECT_EQ(wet.outlet.liquid_share(), 0);
    EXPECT_LT(wet.outlet.temperature, dry.outlet.temperature - 10);
    EXPECT_EQ(wet.shaft_power, dry.shaft_power);
    EXPECT_NEAR(media::enthalpy_flow(wet.outlet) - media::enthalpy_flow(saturated), wet.shaft_power,
                1e-6 * wet.shaft_power);
    blower.evaporated_inside = 0.6;
    const auto usual = blower.compress(saturated, 156.8e3, surroundings);
    EXPECT_NEAR(usual.outlet.liquid_share(), 0.4 * saturated.liquid_share(), 1e-9);
}

TEST(WetCharge, BlowerWithWetChargeCoolsItsCaseLess) {
    auto blower = roots();
    blower.friction_torque = 0.25;
    blower.case_conductance = 3;
    blower.case_to_air = 2;
    Surroundings surroundings = day();
    surroundings.drive_speed = 7000 * rpm;
    const auto in = media::with_liquid(humid(100e3, 298.15, 0.0243), {0.01, 0, 0, 0}, 298.15, 5e-5);
    const auto wet = blower.compress(in, 156.8e3, surroundings);
    const auto dry = blower.compress(humid(100e3, 298.15, 0.0243), 156.8e3, surroundings);
    EXPECT_LT(wet.casing_loss, dry.casing_loss);
    EXPECT_NEAR(wet.casing_loss + wet.bearing_loss,
                2 * (wet.case_temperature - surroundings.under_hood_temperature),
                1e-3 * dry.shaft_power);
}

// Rotors catch what flies: of the drops that go through a share leaves along the walls, and film
// stays film.
TEST(WetCharge, LeavesABlowerMostlyAsFilm) {
    auto blower = roots();
    Surroundings surroundings = day();
    surroundings.drive_speed = 7000 * rpm;
    auto in = media::with_liquid(humid(100e3, 298.15, 0.0243), {0.03, 0, 0, 0}, 298.15, 5e-5);
    for (const double film : {0.0, 0.5, 1.0}) {
        in.film_share = film;
        for (const double caught : {0.0, 0.7, 1.0}) {
            blower.film_behind = caught;
            const auto out = blower.compress(in, 156.8e3, surroundings).outlet;
            ASSERT_GT(out.liquid_share(), 0);
            EXPECT_NEAR(1 - out.film_share, (1 - film) * (1 - caught), 1e-12);
        }
    }
}

TEST(WetCharge, VapourDisplacesAir) {
    const auto in = humid(160e3, 363, 0.025);
    auto wet = media::with_liquid(in, {0.02, 0, 0, 0}, 298.15, 20e-6);
    const auto out = media::adiabatic_equilibrium(wet);
    const double dry_density = out.density() / (1 + out.vapour_share());
    const double cold_alone = in.density() / (1 + in.vapour_share()) * 363 / out.temperature;
    EXPECT_NEAR(dry_density / cold_alone, (1 + 0.00988 / 0.62196) / (1 + 0.02988 / 0.62196), 1e-4);
}

TEST(WetCharge, AllocatesNothing) {
    Surroundings surroundings = day();
    surroundings.drive_speed = 7000 * rpm;
    surroundings.fuel_demand = {0, 0, 0.01, 0.08};
    Carburettor carburettor;
    carburettor.venturi = 0.03;
    const auto part = blend_nozzle();
    const auto blower = roots();
    const std::size_t before = allocations();
    auto gas = carburettor.outlet(humid(100e3, 300, 0.02), surroundings);
    gas = blower.compress(gas, 150e3, surroundings).outlet;
    gas = straight(0.3).outlet(part.outlet(gas, surroundings), surroundings);
    EXPECT_EQ(allocations(), before);
    EXPECT_GT(gas.temperature, 200);
}
