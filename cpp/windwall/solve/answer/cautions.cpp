#include "windwall/solve/answer/cautions.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/solve/answer/declared_cautions.hpp"
#include "windwall/solve/answer/path_cautions.hpp"
#include "windwall/solve/full_throttle/acceleration_path.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <numbers>
#include <utility>

namespace windwall::solve {
namespace {

// Where small spark-ignition engines at full load are found; common practice.
constexpr double coldest_exhaust = 273.15 + 550;
constexpr double hottest_exhaust = 273.15 + 1050;
// At the port, and behind the spark of best torque: common practice for valves and exhausts that
// nobody rated, no source.
constexpr double hot_port = 273.15 + 900;
constexpr double late_for_heat = 12 * std::numbers::pi / 180;
// Of the fuel by mass: to here what sprayed water does for knock was measured (NACA WR E-244).
constexpr double most_water_measured = 0.6;
constexpr double rounding = 1e-6;  // of an engine speed

void add_validity(const engine::Validity& valid, std::vector<Caution>& cautions) {
    const auto add = [&](bool inside, CautionKind about, std::string_view address) {
        if (!inside) cautions.push_back({about, std::string(address)});
    };
    add(valid.compression_ratio, CautionKind::compression_ratio, "engine/compression_ratio");
    add(valid.mixture, CautionKind::mixture, "engine/lambda");
    add(valid.mach_index, CautionKind::inlet_mach_index, "engine/valves");
    add(valid.pressure_ratio, CautionKind::exhaust_over_intake, "engine/exhaust");
    add(valid.retard, CautionKind::late_spark, "knock/retard");
    add(valid.knock_pressure, CautionKind::knock_pressure, "knock/margin");
    add(valid.dry_plug, CautionKind::wet_plug, "manifold");
    add(valid.measured_speed, CautionKind::measured_speed, "engine/table");
}

void add_overspeed(double engine_speed, double limit, std::vector<Caution>& cautions) {
    if (engine_speed > (1 + rounding) * limit)
        cautions.push_back({CautionKind::overspeed, "engine/speed", engine_speed, {}, limit});
}

Caution slip(const FullThrottlePoint& full_throttle, const driveline::Overload& over,
             const std::string& part) {
    return {CautionKind::slip, "driveline/" + part,
            over.torque,       {},
            over.holds,        full_throttle.point.condition.engine_speed};
}

}  // namespace

std::vector<Caution> point_cautions(const vehicle::Balance& balance, const Point& point,
                                    const OperatingPoint& now) {
    std::vector<Caution> cautions;
    if (!point.outcome.answered()) return cautions;
    const vehicle::Vehicle& car = balance.vehicle();
    const engine::Intake intake = balance.intake(balance.manifold());
    add_validity(car.engine.visit([&](const auto& engine) {
        return engine.validity(intake, car.fuel, point.spark.retard);
    }),
                 cautions);
    add_overspeed(now.engine.speed, vehicle::speed_limit(car), cautions);
    const auto add = [&](std::vector<Caution> more) {
        std::ranges::move(more, std::back_inserter(cautions));
    };
    add(car.engine.visit([&]<class Engine>(const Engine&) {
        return declared_cautions(fields::group_type<Engine>, "engine", now);
    }));
    add(path_cautions(balance, now));
    if (point.outcome.status == Status::knock_limited) add(throttled_sprays(balance));
    if (!point.spark.modelled) {
        cautions.push_back({CautionKind::torque_curve, "engine"});
    }
    const double at_the_port = now.engine.exhaust_gas_temperature;
    if (point.spark.modelled && point.spark.retard > late_for_heat && at_the_port > hot_port) {
        cautions.push_back(
            {CautionKind::late_heat, "engine/exhaust_gas_temperature", at_the_port, {}, hot_port});
    }
    if (now.knock && now.knock->water_per_fuel.value_or(0) > most_water_measured) {
        cautions.push_back({CautionKind::much_water,
                            "knock/margin",
                            *now.knock->water_per_fuel,
                            {},
                            most_water_measured});
    }
    if (point.spark.modelled && point.spark.margin < 0) {
        cautions.push_back({CautionKind::detonation, "knock/margin", point.spark.margin});
    }
    return cautions;
}

/// Whether a part that slips does so by design: a centrifugal clutch, or a belt that its weights
/// grip and that has not begun to shift. Of these only the equilibrium counts.
bool slips_at_the_start(const driveline::Part& part, double position) {
    if (const auto* belt = part.as<driveline::BeltCvt>()) return belt->flyweights && position <= 0;
    return part.as<driveline::CentrifugalClutch>() != nullptr;
}

std::vector<Caution> slip_cautions(const TopSpeed& found, const vehicle::Vehicle& vehicle) {
    const std::vector<const FullThrottlePoint*> way = acceleration_path(found);
    std::map<std::size_t, Caution> worst;  // of every part that slips anywhere
    for (const FullThrottlePoint* full_throttle : way)
        for (const driveline::Overload& over : driveline::overloads(
                 vehicle.driveline,
                 {full_throttle->point.condition.engine_speed, full_throttle->point.torque},
                 full_throttle->gear_state())) {
            const auto& [id, part] = vehicle.driveline[over.part];
            if (slips_at_the_start(part, full_throttle->position) && full_throttle != way.back())
                continue;
            const auto known = worst.find(over.part);
            if (known == worst.end() || *known->second.found < over.torque)
                worst.insert_or_assign(over.part, slip(*full_throttle, over, id));
        }
    std::vector<Caution> cautions;
    for (auto& [part, caution] : worst)
        cautions.push_back(std::move(caution));
    return cautions;
}

std::vector<Caution> second_balance(PointSolver& solver) {
    const std::optional<double> hotter = solver.hotter_balance();
    if (!hotter) return {};
    return {{CautionKind::two_balances, "manifold/temperature", hotter}};
}

std::vector<Caution> heat_cautions(const HeatAccount& heat) {
    if (heat.exhaust_temperature > coldest_exhaust && heat.exhaust_temperature < hottest_exhaust) {
        return {};
    }
    return {{CautionKind::exhaust_heat, "heat/exhaust", heat.exhaust_temperature, coldest_exhaust,
             hottest_exhaust}};
}

}  // namespace windwall::solve
