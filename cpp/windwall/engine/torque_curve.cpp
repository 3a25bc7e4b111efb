#include "windwall/engine/torque_curve.hpp"

#include "windwall/engine/fuel_air_cycle.hpp"
#include "windwall/engine/geometry.hpp"
#include "windwall/engine/own_fuel.hpp"
#include "windwall/engine/usual.hpp"
#include "windwall/fields/lookup.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double usual_head = 463.15;  // K, what the port is near where the head is not modelled
constexpr double slowest = 30;         // rad/s: keeps flow and filling finite at standstill

constexpr fields::Column table_columns[] = {
    {"engine_speed", fields::angular_speed("rpm"), {0, 20000}, "Engine speed, rising"},
    {"torque", fields::torque("N m"), {0.1, 2000}, "Torque at full load"},
};

}  // namespace

double TorqueCurve::piston_speed(double engine_speed) const noexcept {
    return mean_piston_speed(stroke, engine_speed);
}

double TorqueCurve::net_torque(double engine_speed) const noexcept {
    const double read = fields::looked_up(table, engine_speed);
    switch (measured_at) {
        case MeasuredAt::crank_gross: return read * (1 - gross_allowance);
        case MeasuredAt::wheels: return read / (1 - driveline_loss);
        case MeasuredAt::crank_net: break;
    }
    return read;
}

Mixture TorqueCurve::mixture(const Intake& intake, const media::Fuel& fuel) const noexcept {
    return mix_at(intake, fuel, lambda, true);
}

std::array<double, 4> TorqueCurve::fuel_demand(const media::Fuel& fuel) const noexcept {
    return fuel_for(lambda, fuel);
}

double TorqueCurve::exhaust_pressure(const Intake& intake, const media::Fuel&) const noexcept {
    return intake.exhaust_pressure.value_or(intake.ambient_pressure);
}

/// kg/s of dry air on the day of the measurement: what burns the fuel that gave the torque.
double TorqueCurve::measured_air(double engine_speed, const media::Fuel& fuel) const noexcept {
    const double power = net_torque(engine_speed) * engine_speed;
    return power / brake_efficiency / fuel.heating_value() * lambda * fuel.stoichiometric_ratio();
}

double TorqueCurve::gas_demand(const Intake& intake, const media::Fuel& fuel) const noexcept {
    const media::Stream& charge = intake.charge;
    const double speed = std::max(intake.engine_speed, slowest);
    // Air goes with pressure and with the root of temperature, as SAE J1349 counts other days.
    const double share = charge.pressure / pressure * std::sqrt(temperature / charge.temperature);
    const double gas = measured_air(speed, fuel) * share * media::dry_air().R / charge.gas.R;
    return gas * intake.engine_speed / speed;
}

double TorqueCurve::volumetric_efficiency(const Intake& intake,
                                          const media::Fuel& fuel) const noexcept {
    Intake turning = intake;
    turning.engine_speed = std::max(intake.engine_speed, slowest);
    return gas_demand(turning, fuel) /
           (intake.charge.density() * swept_flow(displacement, turning.engine_speed));
}

Temperatures TorqueCurve::temperatures(const Intake&, const media::Fuel&) const noexcept {
    return {0, 0, false};
}

Spark TorqueCurve::best_spark(const Intake&, const media::Fuel&) const noexcept {
    Spark as_it_was;
    as_it_was.modelled = false;
    return as_it_was;
}

Spark TorqueCurve::choose_spark(const Intake& intake, const media::Fuel& fuel) const noexcept {
    return best_spark(intake, fuel);
}

std::optional<double> TorqueCurve::integral_requirement(const Intake&, const media::Fuel&,
                                                        double) const noexcept {
    return std::nullopt;
}

Work TorqueCurve::work(const Intake& intake, const media::Fuel& fuel, double) const noexcept {
    const Mixture burnt = mixture(intake, fuel);
    const double speed = std::max(intake.engine_speed, least_speed);
    const double measured = net_torque(speed) * speed;
    const double swept = swept_flow(displacement, speed);
    const double share = intake.charge.dry_air / measured_air(speed, fuel);

    Work work;
    work.engine_speed = speed;
    work.lambda = burnt.lambda;
    work.fuel_flow = intake.charge.dry_air * burnt.own_fuel;
    work.injected_fuel_flow = intake.charge.dry_air * burnt.injected_fuel;
    work.fuel_power = intake.charge.dry_air * burnt.heating;
    work.released = work.fuel_power * (1 - unburnt_share(burnt.equivalence_ratio()));
    work.chamber_heat =
        work.released *
        walls.chamber_share(
            {0, speed / rev_limit, intake.charge.pressure / media::constants::isa_pressure});
    work.indicated = share * measured / mechanical_efficiency;
    work.rubbing = measured * (1 / mechanical_efficiency - 1);
    work.indicated_efficiency = work.fuel_power > 0 ? work.indicated / work.fuel_power : 0;
    work.indicated_mean_pressure = work.indicated / swept;
    work.rubbing_mean_pressure = work.rubbing / swept;
    work.brake_mean_pressure = work.power() / swept;
    return work;
}

ExhaustGas TorqueCurve::exhaust_gas(const Intake& intake, const media::Fuel& fuel,
                                    const Work& work) const noexcept {
    return engine::exhaust_gas(intake, work, walls, usual_head,
                               {intake.charge.gas_flow(), measured_air(rev_limit, fuel),
                                intake.engine_speed, rev_limit, displacement});
}

std::optional<Injection> TorqueCurve::injection(const Intake& intake, const media::Fuel& fuel,
                                                const Work& work) const noexcept {
    if (!injector || intake.carburetted) return std::nullopt;
    return injector->inject(work.fuel_flow, intake.engine_speed, fuel.density(),
                            intake.charge.pressure, intake.ambient_pressure, 1);
}

Validity TorqueCurve::validity(const Intake& intake, const media::Fuel&, double) const noexcept {
    Validity validity;
    if (table.empty()) return validity;
    const std::vector<double>& speeds = table.column[0];
    validity.measured_speed =
        intake.engine_speed >= speeds.front() && intake.engine_speed <= speeds.back();
    return validity;
}

std::optional<fields::Violation> TorqueCurve::check() const {
    if (!table.empty() && !fields::rises(table))
        return fields::Violation{"table", "engine speeds must rise from row to row"};
    return std::nullopt;
}

std::span<const fields::Row> TorqueCurve::rows() {
    using namespace fields;
    static constexpr Row rows[] = {
        fields::table("table", at<&TorqueCurve::table>, table_columns,
                      "Torque over engine speed at full load, linear in between, its ends held",
                      Need::required),
        required("displacement", "V_d", at<&TorqueCurve::displacement>, volume("cm3"), {20, 20000},
                 "Volume swept by all pistons"),
        required("stroke", "S", at<&TorqueCurve::stroke>, length("mm"), {20, 160},
                 "Stroke of a piston"),
        required("rev_limit", "N_m", at<&TorqueCurve::rev_limit>, angular_speed("rpm"),
                 {1000, 20000}, "Engine speed that is never passed"),
        with_default(
            "temperature", "T_d", at<&TorqueCurve::temperature>, fields::temperature("degC"),
            {-30, 60}, 5,
            "Air temperature the curve holds for: that of its day, or of the standard it was "
            "corrected to",
            "SAE J1349, 25 degC"),
        with_default("pressure", "p_d", at<&TorqueCurve::pressure>, absolute_pressure("kPa"),
                     {50, 110}, 2,
                     "Air pressure the curve holds for: that of its day, or of the standard it was "
                     "corrected to",
                     "SAE J1349, 99 kPa dry"),
        choice("measured_at", at<&TorqueCurve::measured_at>,
               "crank_net: with air box and silencer; crank_gross: without; wheels: at the wheels, "
               "divided by the ratio to the crank",
               "common practice, what makers print today"),
        with_default("gross_allowance", "g_g", at<&TorqueCurve::gross_allowance>, percent(),
                     {0, 40}, 6, "Share of a gross torque that air box and silencer take",
                     "no source; SAE J1995 tests without both, SAE J1349 with them"),
        with_default(
            "driveline_loss", "g_w", at<&TorqueCurve::driveline_loss>, percent(), {0, 40}, 4,
            "Share of the torque at the crank that was lost before the wheels of the test bench",
            "common practice"),
        with_default(
            "mechanical_efficiency", "e_m", at<&TorqueCurve::mechanical_efficiency>, percent(),
            {50, 98}, 4,
            "Brake over indicated power at full load: what friction keeps while the air changes",
            "SAE J1349"),
        with_default("brake_efficiency", "e_b", at<&TorqueCurve::brake_efficiency>, percent(),
                     {10, 45}, 3, "Brake power over the heating value of the fuel at full load",
                     "25 to 30 % for small engines at full load; common practice"),
        with_default("lambda", "l", at<&TorqueCurve::lambda>, number(), {0.65, 1.4}, 0.04,
                     "Air over what the fuel needs, at full load", "common practice, 0.85 to 0.90"),
        with_default("idle_speed", "N_i", at<&TorqueCurve::idle_speed>, angular_speed("rpm"),
                     {300, 3000}, 250, "Engine speed at which it idles",
                     "common practice: 800 to 1000 rpm of cars, 1100 to 1400 of motorcycles, up to "
                     "1750 of industrial engines"),
        with_default("inertia", "J", at<&TorqueCurve::inertia>, fields::inertia("kg m2"), {0, 2},
                     0.005, "Moment of inertia of crank and flywheel",
                     "derived: a flywheel of 2.5 kg, 180 mm across; 0.003 is one of 0.75 kg, 0.02 "
                     "one of 5 kg"),
        group("walls", at<&TorqueCurve::walls>, "Heat to head and barrel"),
        optional_group("injector", at<&TorqueCurve::injector>,
                       "Injectors; a carburetted engine has none"),
    };
    return rows;
}

}  // namespace windwall::engine
