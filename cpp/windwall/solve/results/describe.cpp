#include "windwall/solve/results/describe.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/solve/results/describe_variator.hpp"
#include "windwall/vehicle/balance/knock_hold.hpp"

#include <cmath>
#include <numbers>

namespace windwall::solve {
namespace {

using vehicle::Balance;
using vehicle::Station;

constexpr double revolutions_per_cycle = 2;

GasResult gas(const media::Stream& stream) {
    return {stream.pressure, stream.temperature, stream.gas_flow(),
            stream.liquid_share() * stream.dry_air};
}

/// Isentropic work over shaft work, with the heat capacity of the gas at the inlet.
double efficiency(const Station& station) {
    const media::Stream& in = station.inlet;
    const double ideal =
        charge::isentropic_head(station.outlet.pressure / in.pressure, in.temperature,
                                in.gas.heat_capacity(in.temperature), in.gas.gamma(in.temperature));
    return in.gas_flow() * ideal / station.compression.shaft_power;
}

CompressedResult compressed(const Balance& balance, const Station& station) {
    const charge::Compression& did = station.compression;
    const double ambient = balance.surroundings().ambient_pressure;
    return {gas(station.inlet),
            gas(station.outlet),
            station.outlet.pressure / station.inlet.pressure,
            1 + (station.outlet.pressure - station.inlet.pressure) / ambient,
            did.rotor_speed,
            station.leak_share(),
            efficiency(station),
            ambient - station.inlet.pressure,
            did.shaft_power,
            did.crank_power};
}

/// s that the charge needs to pass all vessels behind a station, in which it is stirred.
double mixing_time(const Balance& balance, const Station& station) {
    const auto stations = balance.stations();
    double time = 0;
    for (auto i = static_cast<std::size_t>(&station - stations.data()); i < stations.size(); ++i) {
        balance.vehicle().charge_path[i].part.visit(
            [&]<class Part>([[maybe_unused]] const Part& part) {
                const media::Stream& gas = stations[i].outlet;
                if constexpr (charge::Stirring<Part>)
                    time += part.volume * gas.density() / gas.gas_flow();
            });
    }
    return time;
}

template <charge::Spraying Part>
SprayedResult sprayed(const Part& part, const Balance& balance, const Station& station) {
    const charge::Spray made = part.spray(station.inlet, balance.surroundings_of(station));
    const bool pumped = made.flow > made.siphoned;
    return {gas(station.inlet),
            gas(station.outlet),
            made.flow,
            made.siphoned,
            made.pressure_difference,
            made.drop_diameter,
            pumped
                ? part.cycle_spread(balance.condition().engine_speed, mixing_time(balance, station))
                : 0};
}

template <class Part>
PartResult part_result(const Part& part, const Balance& balance, const Station& station) {
    const double drop = station.inlet.pressure - station.outlet.pressure;
    if constexpr (charge::Driven<Part>) {
        return compressed(balance, station);
    } else if constexpr (charge::Metering<Part>) {
        return MeteredResult{gas(station.inlet), gas(station.outlet), drop,
                             part.opening(balance.surroundings())};
    } else if constexpr (charge::Branching<Part>) {
        return BranchedResult{gas(station.inlet), gas(station.outlet),
                              station.inlet.gas_flow() - station.outlet.gas_flow(),
                              part.opening(balance.manifold().pressure, balance.surroundings())};
    } else if constexpr (charge::Spraying<Part>) {
        return sprayed(part, balance, station);
    } else if constexpr (charge::Leaking<Part>) {
        return LeakedResult{gas(station.inlet), gas(station.outlet),
                            station.inlet.gas_flow() - station.outlet.gas_flow()};
    } else {
        return ResistedResult{gas(station.inlet), gas(station.outlet), drop,
                              station.heat_given_off()};
    }
}

void describe_path(const Balance& balance, OperatingPoint& into) {
    const auto& path = balance.vehicle().charge_path;
    into.charge_path.resize(path.size());
    for (std::size_t i = 0; i < path.size(); ++i) {
        into.charge_path[i].id = path[i].id;
        into.charge_path[i].part = path[i].part.visit(
            [&](const auto& part) { return part_result(part, balance, balance.stations()[i]); });
    }
}

std::optional<KnockResult> knock(const Balance& balance, const engine::Spark& spark,
                                 double gas_temperature, std::optional<double> integral) {
    if (!spark.modelled) return std::nullopt;
    const vehicle::MeansLeft means = vehicle::means_left(balance, spark, gas_temperature);
    KnockResult result{spark.margin,
                       spark.requirement,
                       spark.fuel_index,
                       spark.retard,
                       engine::knock_probability(spark.margin, spark.spread),
                       means.at_best_spark,
                       engine::knock_probability(means.at_best_spark, spark.spread),
                       means.retard,
                       means.enrichment,
                       means.enrichment_left,
                       integral,
                       {},
                       {}};
    if (integral) result.integral_margin = spark.fuel_index - *integral;
    return result;
}

/// Water of all jets over all fuel, kg/kg; empty where there is no jet.
std::optional<double> water_per_fuel(const vehicle::Vehicle& car, const OperatingPoint& now) {
    std::optional<double> water;
    for (std::size_t i = 0; i < car.charge_path.size(); ++i)
        if (const auto* jet = car.charge_path[i].part.as<charge::EvaporativeInjection>())
            water = water.value_or(0) + now.charge_path[i].part.as<SprayedResult>()->liquid_flow *
                                            jet->blend()[media::index(media::Vapour::water)];
    const double fuel = now.engine.fuel_flow;
    return water && fuel > 0 ? std::optional(*water / fuel) : std::nullopt;
}

void describe_engine(const Balance& balance, const Point& point, SecondOpinion second_opinion,
                     OperatingPoint& into) {
    const vehicle::Vehicle& car = balance.vehicle();
    const engine::Intake intake = balance.intake(balance.manifold());
    const double speed = point.condition.engine_speed;
    car.engine.visit([&](const auto& engine) {
        const engine::ExhaustGas exhaust = engine.exhaust_gas(intake, car.fuel, point.work);
        const double cycles = speed / (2 * std::numbers::pi * revolutions_per_cycle);
        into.engine = {speed,
                       point.condition.opening,
                       engine.piston_speed(speed),
                       point.torque,
                       point.torque * speed,
                       point.torque * speed / (engine.swept_volume() * cycles),
                       engine.volumetric_efficiency(intake, car.fuel),
                       engine.exhaust_pressure(intake, car.fuel),
                       point.work.fuel_flow + point.work.injected_fuel_flow,
                       point.work.lambda,
                       exhaust.temperature,
                       engine::heat(point.work, exhaust).walls,
                       {},
                       {}};
        const engine::Temperatures hot = engine.temperatures(intake, car.fuel);
        if (hot.known) {
            into.engine.head_temperature = hot.head;
            into.engine.oil_temperature = hot.oil;
        }
        std::optional<double> integral;
        if (second_opinion == SecondOpinion::asked)
            integral = engine.integral_requirement(intake, car.fuel, point.spark.retard);
        into.knock = knock(balance, point.spark, exhaust.temperature, integral);
        if (into.knock) into.knock->water_per_fuel = water_per_fuel(car, into);
        const auto injection = engine.injection(intake, car.fuel, point.work);
        into.injector.reset();
        if (injection) {
            into.injector = {injection->duty, injection->pulse_width, injection->pressure_drop};
        }
    });
}

}  // namespace

void describe(const Balance& balance, const Point& point, OperatingPoint& into,
              SecondOpinion second_opinion) {
    const media::Stream& charge = balance.manifold();
    into.manifold = {charge.pressure, charge.pressure - balance.surroundings().ambient_pressure,
                     charge.temperature, charge.dry_air};
    describe_path(balance, into);
    describe_engine(balance, point, second_opinion, into);
    into.road.reset();
    into.tyres.reset();
    into.variator.reset();
}

void describe(const Balance& balance, const FullThrottlePoint& full_throttle, OperatingPoint& into,
              SecondOpinion second_opinion) {
    describe(balance, full_throttle.point, into, second_opinion);
    describe_road(balance.vehicle(), full_throttle, into);
}

void describe_road(const vehicle::Vehicle& car, const FullThrottlePoint& full_throttle,
                   OperatingPoint& into) {
    into.road = {full_throttle.road_speed,
                 static_cast<double>(full_throttle.gear) + 1,
                 driveline::total_ratio(car.driveline, full_throttle.gear_state()),
                 full_throttle.thrust,
                 full_throttle.excess_force(),
                 full_throttle.load.air,
                 full_throttle.load.rolling,
                 full_throttle.load.grade};
    into.tyres = {full_throttle.slip, car.tyres.load_per_tyre(car.body.mass, full_throttle.thrust)};
    into.variator = variator_result(car, full_throttle);
}

}  // namespace windwall::solve
