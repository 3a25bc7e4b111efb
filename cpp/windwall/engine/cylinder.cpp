#include "windwall/engine/cylinder.hpp"

#include "windwall/engine/geometry.hpp"
#include "windwall/engine/own_fuel.hpp"
#include "windwall/engine/pumping.hpp"
#include "windwall/engine/usual.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double filling_gamma = 1.3;  // of charge and residual; its effect is small

double piston_mach_index(const Cylinder& engine, const Intake& intake) noexcept {
    const double T = intake.charge.temperature;
    const double sound = std::sqrt(intake.charge.gas.gamma(T) * intake.charge.gas.R * T);
    return mach_index(engine.piston_speed(intake.engine_speed), engine.valves.intake_area_share(),
                      sound);
}

double pumping_mean_pressure(const Cylinder& engine, const Intake& intake,
                             double exhaust_pressure) noexcept {
    const double speed = engine.piston_speed(intake.engine_speed);
    const Valves& valves = engine.valves;
    const double charge = intake.charge.density() / usual_air_density;
    const double exhaust = exhaust_pressure / media::constants::isa_pressure;
    const double losses =
        valve_mean_pressure(speed, charge, valves.per_side, valves.intake_ratio) +
        valve_mean_pressure(speed, exhaust, valves.per_side, valves.exhaust_ratio);
    return exhaust_pressure - intake.charge.pressure + valves.flow_loss * losses;
}

/// What liquids that evaporate before the intake closes make of the filling: a colder gas, of which
/// the vapour takes its place; the walls warm the colder gas more, as in the rule of the root.
double evaporating(const media::Stream& charge, const AtValve& liquid, double share) noexcept {
    const Evaporated drops = evaporate(charge, liquid, share);
    const double T = charge.temperature;
    return std::sqrt(T / (T - drops.cooling)) / (1 + drops.displaced);
}

/// Filling over that with petrol injected at the port, with which it is known.
double evaporation_share(const Evaporation& evaporation, const media::Stream& charge,
                         const AtValve& liquid, const Mixture& burnt) noexcept {
    return evaporating(charge, liquid, evaporation.before_closing) /
           evaporating(charge, petrol_at_port(burnt.equivalence_ratio()),
                       Evaporation{}.before_closing);
}

}  // namespace

double Cylinder::swept_volume() const noexcept {
    return engine::swept_volume(bore, stroke, cylinders);
}

double Cylinder::piston_speed(double engine_speed) const noexcept {
    return mean_piston_speed(stroke, engine_speed);
}

Intake Cylinder::worked_out(Intake intake, const media::Fuel& fuel) const noexcept {
    const Mixture burnt = mixture(intake, fuel);
    intake.burnt = burnt;
    intake.exhaust_pressure = pressure_behind(intake, burnt);
    intake.head_temperature = head(intake, burnt);
    return intake;
}

Mixture Cylinder::mixture(const Intake& intake, const media::Fuel& fuel) const noexcept {
    if (intake.burnt) return *intake.burnt;
    return mix_at(intake, fuel, lambda - intake.enrichment, combustion.trims_for_injected_fuel);
}

std::array<double, 4> Cylinder::fuel_demand(const media::Fuel& fuel) const noexcept {
    return fuel_for(lambda, fuel);
}

double Cylinder::pressure_behind(const Intake& intake, const Mixture& burnt) const noexcept {
    if (intake.exhaust_pressure) return *intake.exhaust_pressure;
    const media::Stream& charge = intake.charge;
    const double flow =
        charge.dry_air * (1 + charge.vapour_share() + charge.liquid_share() + burnt.own_fuel);
    const double usual_flow = usual_air_density * swept_flow(swept_volume(), rev_limit);
    return intake.ambient_pressure +
           exhaust.rise(flow, intake.ambient_pressure, usual_flow, charge.temperature);
}

double Cylinder::exhaust_pressure(const Intake& intake, const media::Fuel& fuel) const noexcept {
    return pressure_behind(intake, mixture(intake, fuel));
}

double Cylinder::filling(const Intake& intake, const Mixture& burnt, double ratio) const noexcept {
    if (breathing.stated_efficiency) return *breathing.stated_efficiency;
    const double T = intake.charge.temperature;
    const double pressure_ratio = pressure_behind(intake, burnt) / intake.charge.pressure;
    return breathing.peak_efficiency *
           breathing.speed_share(intake.engine_speed, usual_best_share * rev_limit) *
           mach_filling(piston_mach_index(*this, intake), valves.intake_closing) *
           ideal_volumetric_efficiency(ratio, pressure_ratio, filling_gamma) *
           filling_temperature_share(T, breathing.reference_temperature) *
           filling_head_share(T, head(intake, burnt), breathing.reference_head_temperature,
                              breathing.wall_heating) *
           evaporation_share(evaporation, intake.charge, at_valve(intake, burnt), burnt);
}

double Cylinder::volumetric_efficiency(const Intake& intake,
                                       const media::Fuel& fuel) const noexcept {
    return filling(intake, mixture(intake, fuel), compression_ratio);
}

double Cylinder::gas_demand(const Intake& intake, const media::Fuel& fuel) const noexcept {
    return volumetric_efficiency(intake, fuel) * intake.charge.density() *
           swept_flow(swept_volume(), intake.engine_speed);
}

Work Cylinder::work(const Intake& intake, const media::Fuel& fuel, double retard) const noexcept {
    const Mixture burnt = mixture(intake, fuel);
    const double dry_air = intake.charge.dry_air;
    const double speed = std::max(intake.engine_speed, least_speed);
    const double swept = swept_flow(swept_volume(), speed);

    Work work;
    work.engine_speed = speed;
    work.lambda = burnt.lambda;
    work.fuel_flow = dry_air * burnt.own_fuel;
    work.injected_fuel_flow = dry_air * burnt.injected_fuel;
    work.fuel_power = dry_air * burnt.heating;
    work.indicated_efficiency =
        combustion.efficiency(compression_ratio, burnt.equivalence_ratio(), retard);
    const Burning flame = burning(intake, burnt, compression_ratio);
    work.burnt = flame.burnt;
    work.indicated_efficiency *= flame.burnt * flame.kept;
    work.indicated = work.indicated_efficiency * work.fuel_power;
    work.released = flame.burnt * released(intake, burnt);
    work.chamber_heat =
        work.released *
        walls.chamber_share({retard, speed / known_speed(),
                             intake.charge.pressure / media::constants::isa_pressure});

    work.indicated_mean_pressure = mean_effective_pressure(work.indicated, swept_volume(), speed);
    work.rubbing_mean_pressure = friction.mean_pressure(
        piston_speed(speed), intake.charge.pressure - intake.ambient_pressure,
        oil.friction_share(oil_temperature(intake, burnt)));
    work.pumping_mean_pressure =
        pumping_mean_pressure(*this, intake, pressure_behind(intake, burnt));

    work.rubbing = work.rubbing_mean_pressure * swept;
    work.pumping = work.pumping_mean_pressure * swept;
    work.accessories = accessories.drag(speed) * speed;
    work.brake_mean_pressure = mean_effective_pressure(work.power(), swept_volume(), speed);
    return work;
}

std::optional<Injection> Cylinder::injection(const Intake& intake, const media::Fuel& fuel,
                                             const Work& work) const noexcept {
    if (!injector || intake.carburetted) return std::nullopt;
    return injector->inject(work.fuel_flow, intake.engine_speed, fuel.density(),
                            intake.charge.pressure, intake.ambient_pressure, cylinders);
}

Validity Cylinder::validity(const Intake& intake, const media::Fuel& fuel,
                            double retard) const noexcept {
    const auto within = [](double low, double value, double high) {
        return value >= low && value <= high;
    };
    const double pressure = intake.charge.pressure;
    Validity validity;
    validity.compression_ratio = within(6, compression_ratio, 12);
    validity.mixture = within(0.6, mixture(intake, fuel).equivalence_ratio(), 1.4);
    validity.mach_index = piston_mach_index(*this, intake) <= 1.2;
    validity.pressure_ratio = within(0.3, exhaust_pressure(intake, fuel) / pressure, 3);
    validity.retard = std::abs(retard) <= 30 * degree;
    validity.knock_pressure = within(0.5, pressure / knock_anchor.manifold_pressure, 2);
    const media::Stream& charge = intake.charge;
    const Mixture burnt = mixture(intake, fuel);
    const double water = charge.liquid[media::index(media::Vapour::water)];
    validity.water = water <= 0.6 * (burnt.own_fuel + burnt.injected_fuel);
    validity.dry_plug = (intake.carburetted ? water : charge.liquid_share()) <= 0.06;
    return validity;
}

}  // namespace windwall::engine
