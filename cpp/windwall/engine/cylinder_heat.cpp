// What the heat of one operating point makes of head and oil.
#include "windwall/engine/cylinder.hpp"
#include "windwall/engine/fuel_air_cycle.hpp"
#include "windwall/engine/geometry.hpp"
#include "windwall/engine/usual.hpp"

#include <algorithm>

namespace windwall::engine {
namespace {

// Air and mixture at the known point: 25 degC, 101.3 kPa, and the fuel-air ratio of 0.08 at which
// the temperature of the gas is stated.
constexpr double known_equivalence_ratio = 1.17;
constexpr double sound_speed = 346;        // m/s, 25 degC
constexpr double energy_of_air = 2.972e6;  // J per kg of air that burns with petrol

}  // namespace

HeadState Cylinder::head_state(const Intake& intake, const Mixture& burnt) const noexcept {
    const media::Stream& charge = intake.charge;
    const double warmer = intake.under_hood_temperature - intake.ambient_temperature;
    const double T = intake.ambient_temperature + cooling.warm_air_share * warmer;
    return {charge.gas_flow(),
            charge.temperature,
            burnt.equivalence_ratio(),
            intake.engine_speed,
            intake.road_speed,
            intake.ambient_pressure / (media::constants::gas_constant_air * T),
            T};
}

HeadState Cylinder::known_head_state() const noexcept {
    const double speed = known_speed();
    const double index = mach_index(piston_speed(speed), valves.intake_area_share(), sound_speed);
    const double filled = breathing.peak_efficiency *
                          breathing.speed_share(speed, usual_best_share * rev_limit) *
                          mach_filling(index, valves.intake_closing);
    const double T = cooling.known_air_temperature, charge = cooling.known_charge_temperature;
    const double density =
        cooling.known_manifold_pressure / (media::constants::gas_constant_air * charge);
    return {filled * filling_temperature_share(charge, breathing.reference_temperature) * density *
                swept_flow(swept_volume(), speed),
            charge,
            known_equivalence_ratio,
            speed,
            cooling.known_road_speed,
            media::constants::isa_pressure / (media::constants::gas_constant_air * T),
            T};
}

double Cylinder::head(const Intake& intake, const Mixture& burnt) const noexcept {
    if (intake.head_temperature) return *intake.head_temperature;
    return head(intake, burnt, known_head_state());
}

double Cylinder::head(const Intake& intake, const Mixture& burnt,
                      const HeadState& known) const noexcept {
    if (intake.head_temperature) return *intake.head_temperature;
    const Cooling measured = measured_cooling();
    const HeadState here = head_state(intake, burnt);
    return cooling.pull_time ? measured.head_in_pull(here, known, known_head_heat(known))
                             : measured.head_temperature(here, known);
}

/// Known by the head of this engine, where it was measured.
Cooling Cylinder::measured_cooling() const noexcept {
    Cooling known = cooling;
    if (head_temperature) known.known_head_temperature = *head_temperature;
    return known;
}

/// W, from friction with hot oil and from the walls.
double Cylinder::heat_to_oil(double piston_speed, double released,
                             double engine_speed) const noexcept {
    return friction.mean_pressure(piston_speed, 0) * swept_flow(swept_volume(), engine_speed) +
           oil.wall_share * walls.share * released;
}

/// W, were all of it to burn that could.
double Cylinder::released(const Intake& intake, const Mixture& burnt) const noexcept {
    return intake.charge.dry_air * burnt.heating * (1 - unburnt_share(burnt.equivalence_ratio()));
}

double Cylinder::known_released(const HeadState& known) const noexcept {
    return known.charge_flow * energy_of_air * known.equivalence_ratio *
           (1 - unburnt_share(known.equivalence_ratio));
}

/// W that went through the head where it was known.
double Cylinder::known_head_heat(const HeadState& known) const noexcept {
    return (1 - oil.wall_share) * walls.share * known_released(known);
}

double Cylinder::oil_temperature(const Intake& intake, const Mixture& burnt) const noexcept {
    if (oil.temperature) return *oil.temperature;
    if (intake.oil_temperature) return *intake.oil_temperature;
    const HeadState here = head_state(intake, burnt), known = known_head_state();
    const double heat =
        heat_to_oil(piston_speed(here.engine_speed), released(intake, burnt), here.engine_speed);
    const double known_heat =
        heat_to_oil(piston_speed(known.engine_speed), known_released(known), known.engine_speed);
    return oil.equilibrium(heat / known_heat, cooling.flow_share(here, known),
                           cooling.sink_temperature(here.air_temperature),
                           cooling.sink_temperature(known.air_temperature));
}

Temperatures Cylinder::temperatures(const Intake& intake, const media::Fuel& fuel) const noexcept {
    const Mixture burnt = mixture(intake, fuel);
    return {head(intake, burnt), oil_temperature(intake, burnt)};
}

ExhaustGas Cylinder::exhaust_gas(const Intake& intake, const media::Fuel& fuel,
                                 const Work& work) const noexcept {
    const HeadState known = known_head_state();
    return exhaust_gas(intake, work, known, head(intake, mixture(intake, fuel), known));
}

ExhaustGas Cylinder::exhaust_gas(const Intake& intake, const Work& work, const HeadState& known,
                                 double metal) const noexcept {
    return engine::exhaust_gas(intake, work, walls, metal,
                               {intake.charge.gas_flow(), known.charge_flow, intake.engine_speed,
                                known.engine_speed, swept_volume()});
}

}  // namespace windwall::engine
