#include "windwall/engine/cylinder.hpp"

#include "windwall/engine/geometry.hpp"
#include "windwall/engine/pumping.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::engine {
namespace {

constexpr double filling_gamma = 1.3;        // of charge and residual; its effect is small
constexpr double usual_best_share = 0.7;     // of the rev limit
constexpr double usual_air_density = 1.184;  // kg/m3, 25 degC and 101.3 kPa
constexpr double least_speed = 1;            // rad/s: keeps torque finite at standstill

double piston_mach_index(const Cylinder& engine, const Intake& intake) noexcept {
    const double T = intake.charge.temperature;
    const double sound = std::sqrt(intake.charge.gas.gamma(T) * intake.charge.gas.R * T);
    return mach_index(engine.piston_speed(intake.engine_speed), engine.valves.intake_area_share(),
                      sound);
}

double pumping_mean_pressure(const Cylinder& engine, const Intake& intake,
                             double exhaust_pressure) noexcept {
    const double speed = engine.piston_speed(intake.engine_speed);
    const double ratio = intake.charge.pressure / intake.ambient_pressure;
    const Valves& valves = engine.valves;
    const double losses = valve_mean_pressure(speed, ratio, valves.per_side, valves.intake_ratio) +
                          valve_mean_pressure(speed, ratio, valves.per_side, valves.exhaust_ratio);
    return exhaust_pressure - intake.charge.pressure + valves.flow_loss * losses;
}

}  // namespace

double Cylinder::swept_volume() const noexcept {
    return engine::swept_volume(bore, stroke, cylinders);
}

double Cylinder::piston_speed(double engine_speed) const noexcept {
    return mean_piston_speed(stroke, engine_speed);
}

Mixture Cylinder::mixture(const Intake& intake, const media::Fuel& fuel) const noexcept {
    return mix(intake.charge, fuel, lambda, combustion.trims_for_injected_fuel);
}

double Cylinder::exhaust_pressure(const Intake& intake, const media::Fuel& fuel) const noexcept {
    const media::Stream& charge = intake.charge;
    double liquid = 0;
    for (const double share : charge.liquid)
        liquid += share;
    const double flow =
        charge.dry_air * (1 + charge.vapour_share() + liquid + mixture(intake, fuel).own_fuel);
    const double usual_flow = usual_air_density * swept_flow(swept_volume(), rev_limit);
    return intake.ambient_pressure + exhaust.rise(flow, intake.ambient_pressure, usual_flow);
}

double Cylinder::volumetric_efficiency(const Intake& intake,
                                       const media::Fuel& fuel) const noexcept {
    const double pressure_ratio = exhaust_pressure(intake, fuel) / intake.charge.pressure;
    return breathing.peak_efficiency *
           breathing.speed_share(intake.engine_speed, usual_best_share * rev_limit) *
           mach_filling(piston_mach_index(*this, intake), valves.intake_closing) *
           ideal_volumetric_efficiency(compression_ratio, pressure_ratio, filling_gamma) *
           filling_temperature_share(intake.charge.temperature, breathing.reference_temperature);
}

double Cylinder::gas_demand(const Intake& intake, const media::Fuel& fuel) const noexcept {
    return volumetric_efficiency(intake, fuel) * intake.charge.density() *
           swept_flow(swept_volume(), intake.engine_speed);
}

Spark Cylinder::choose_spark(const Intake& intake, const media::Fuel& fuel) const noexcept {
    const KnockState best_torque{compression_ratio,
                                 intake.engine_speed,
                                 intake.charge.pressure,
                                 intake.charge.temperature,
                                 head_temperature,
                                 0,
                                 mixture(intake, fuel).lambda,
                                 intake.humidity_ratio,
                                 exhaust_pressure(intake, fuel)};
    return spark.choose(intake.engine_speed, knock_anchor.requirement(best_torque),
                        fuel.octane_index(octane_sensitivity_weight));
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
    work.indicated = work.indicated_efficiency * work.fuel_power;

    work.indicated_mean_pressure = mean_effective_pressure(work.indicated, swept_volume(), speed);
    work.rubbing_mean_pressure = friction.mean_pressure(
        piston_speed(speed), intake.charge.pressure - intake.ambient_pressure);
    work.pumping_mean_pressure =
        pumping_mean_pressure(*this, intake, exhaust_pressure(intake, fuel));

    work.rubbing = work.rubbing_mean_pressure * swept;
    work.pumping = work.pumping_mean_pressure * swept;
    work.accessories = accessories.drag(speed) * speed;
    work.brake_mean_pressure = mean_effective_pressure(work.power(), swept_volume(), speed);
    return work;
}

Heat Cylinder::heat(const Work& work) const noexcept {
    return walls.heat(work.fuel_power, 1 / work.lambda);
}

std::optional<Injection> Cylinder::injection(const Intake& intake, const media::Fuel& fuel,
                                             const Work& work) const noexcept {
    if (!injector) return std::nullopt;
    return injector->inject(work.fuel_flow, intake.engine_speed, fuel.density(),
                            intake.charge.pressure, intake.ambient_pressure, cylinders);
}

Validity Cylinder::validity(const Intake& intake, const media::Fuel& fuel,
                            double retard) const noexcept {
    const auto within = [](double low, double value, double high) {
        return value >= low && value <= high;
    };
    const double pressure = intake.charge.pressure;
    constexpr double degree = std::numbers::pi / 180;
    Validity validity;
    validity.compression_ratio = within(6, compression_ratio, 12);
    validity.mixture = within(0.6, mixture(intake, fuel).equivalence_ratio(), 1.4);
    validity.mach_index = piston_mach_index(*this, intake) <= 1.2;
    validity.pressure_ratio = within(0.3, exhaust_pressure(intake, fuel) / pressure, 3);
    validity.retard = std::abs(retard) <= 30 * degree;
    validity.knock_pressure = std::abs(pressure - knock_anchor.manifold_pressure) <= 60e3;
    return validity;
}

}  // namespace windwall::engine
