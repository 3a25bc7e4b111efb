#include "windwall/solve/answer/cautions.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/solve/answer/path_cautions.hpp"
#include "windwall/solve/full_throttle/acceleration_path.hpp"

namespace windwall::solve {
namespace {

// Where small spark-ignition engines at full load are found; common practice.
constexpr double coldest_exhaust = 273.15 + 550;
constexpr double hottest_exhaust = 273.15 + 1050;
// Heads of aluminium and mineral oil; common practice, light-aircraft engines among it.
constexpr double hot_head = 273.15 + 230;
constexpr double hot_oil = 273.15 + 120;

void add_validity(const engine::Validity& valid, std::vector<Caution>& cautions) {
    const auto add = [&](bool inside, Concern about, std::string_view address,
                         std::string_view sentence) {
        if (!inside) cautions.push_back({about, std::string(address), std::string(sentence)});
    };
    add(valid.compression_ratio, Concern::compression_ratio, "engine/compression_ratio",
        "The table of fuel-air efficiency covers compression ratios 6 to 12; beyond it is "
        "extrapolated.");
    add(valid.mixture, Concern::mixture, "engine/lambda",
        "The table of fuel-air efficiency covers lambda 0.72 to 1.67; beyond it is extrapolated.");
    add(valid.mach_index, Concern::inlet_mach_index, "engine/valves",
        "The inlet Mach index is beyond 1.2, where the filling table ends; it is extrapolated.");
    add(valid.pressure_ratio, Concern::exhaust_over_intake, "engine/exhaust",
        "Exhaust over intake pressure is outside 0.3 to 3, where the filling rule is stated.");
    add(valid.retard, Concern::late_spark, "knock/retard",
        "The spark is more than 30 degrees from the best one, beyond what its penalty is fitted "
        "to.");
    add(valid.knock_pressure, Concern::knock_pressure, "knock/margin",
        "The manifold pressure is more than 60 kPa from the knock anchor: the octane rule is "
        "extrapolating.");
    add(valid.measured_speed, Concern::measured_speed, "engine/table",
        "The engine speed is outside the measured torque curve; its end is held.");
}

void add_heat(const engine::Temperatures& now, std::vector<Caution>& cautions) {
    using fields::readable;
    if (!now.known) return;
    if (now.head > hot_head) {
        cautions.push_back({Concern::hot_head, "engine/head_temperature",
                            "The head is at " + readable(now.head, fields::temperature("degC")) +
                                "; heads of aluminium lose their strength above 230 degC."});
    }
    if (now.oil > hot_oil) {
        cautions.push_back({Concern::hot_oil, "engine/oil_temperature",
                            "The oil is at " + readable(now.oil, fields::temperature("degC")) +
                                "; above 120 degC it ages within hours and its film thins."});
    }
}

Caution slip(const FullThrottlePoint& pull, const std::string& part) {
    using fields::readable;
    const Point& point = pull.point;
    return {Concern::slip, "driveline/" + part,
            "It slips at full throttle: at " +
                readable(point.condition.engine_speed, fields::angular_speed("rpm"), {}, 3) +
                " the flywheel gives " + readable(point.torque, fields::torque("N m"), {}, 3) +
                ", more than it holds, and what it cannot pass on heats it until it fails."};
}

}  // namespace

std::vector<Caution> point_cautions(const vehicle::Balance& balance, const Point& point) {
    std::vector<Caution> cautions;
    if (!point.outcome.answered()) return cautions;
    const vehicle::Vehicle& car = balance.vehicle();
    const engine::Intake intake = balance.intake(balance.manifold());
    add_validity(car.engine.visit([&](const auto& engine) {
        return engine.validity(intake, car.fuel, point.spark.retard);
    }),
                 cautions);
    add_heat(
        car.engine.visit([&](const auto& engine) { return engine.temperatures(intake, car.fuel); }),
        cautions);
    for (Caution& caution : path_cautions(balance))
        cautions.push_back(std::move(caution));
    if (!point.spark.modelled) {
        cautions.push_back({Concern::torque_curve, "engine",
                            "A torque curve says nothing of knock and heat, and nothing of what "
                            "another charge path or spark would give."});
    }
    if (point.spark.modelled && point.spark.margin < 0) {
        cautions.push_back({Concern::detonation, "knock/margin",
                            "The knock margin is negative in the middle of its band: detonation is "
                            "likely and breaks pistons."});
    }
    return cautions;
}

/// Below its holding speed a centrifugal clutch slips by design: of it only the equilibrium counts.
std::vector<Caution> slip_cautions(const TopSpeed& found, const vehicle::Vehicle& vehicle) {
    const std::vector<const FullThrottlePoint*> way = acceleration_path(found);
    const FullThrottlePoint* worst = nullptr;
    std::size_t part = 0;
    for (const FullThrottlePoint* pull : way) {
        const auto slips = driveline::overloaded(
            vehicle.driveline, {pull->point.condition.engine_speed, pull->point.torque},
            pull->gear_state());
        if (!slips || (worst && pull->point.torque <= worst->point.torque)) continue;
        const bool by_speed = vehicle.driveline[*slips].part.as<driveline::CentrifugalClutch>();
        if (by_speed && pull != way.back()) continue;
        worst = pull;
        part = *slips;
    }
    return worst ? std::vector{slip(*worst, vehicle.driveline[part].id)} : std::vector<Caution>{};
}

std::vector<Caution> heat_cautions(const HeatAccount& heat) {
    if (heat.exhaust_temperature > coldest_exhaust && heat.exhaust_temperature < hottest_exhaust) {
        return {};
    }
    return {{Concern::exhaust_heat, "heat/exhaust",
             "What the heat account leaves to the exhaust would make it " +
                 fields::readable(heat.exhaust_temperature, fields::temperature("degC")) +
                 ", outside the usual 550 to 1050 degC: some heat is booked in the wrong place."}};
}

}  // namespace windwall::solve
