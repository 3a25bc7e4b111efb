#pragma once
#include "windwall/engine/exhaust_gas.hpp"
#include "windwall/engine/heat.hpp"
#include "windwall/engine/injector.hpp"
#include "windwall/engine/intake.hpp"
#include "windwall/engine/limits.hpp"
#include "windwall/engine/mixture.hpp"
#include "windwall/engine/spark.hpp"
#include "windwall/engine/temperatures.hpp"
#include "windwall/engine/validity.hpp"
#include "windwall/engine/usual.hpp"
#include "windwall/engine/work.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/fuel.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// Where a torque curve was measured: at the crank with silencer and air box, without them, or at
/// the wheels and divided by the ratio.
enum class MeasuredAt { crank_net, crank_gross, wheels };

/// Four-stroke engine from its torque at full load. The charge path of that day is in the curve: it
/// answers for other days, loads and drivelines, never for another blower, cooler or spark.
struct TorqueCurve {
    static constexpr std::string_view kind = "torque_curve";
    static constexpr std::string_view description =
        "Four-stroke engine from its measured torque at full load; it cannot tell what another "
        "blower, cooler or throttle would do, and knows nothing of knock.";

    fields::Columns table;        // engine speed in rad/s, torque in N m
    double displacement{};        // m3, all cylinders
    double stroke{};              // m
    double rev_limit{};           // rad/s
    double temperature = 298.15;  // K, of the air of the measurement
    double pressure = 99e3;       // Pa absolute, of that air
    MeasuredAt measured_at = MeasuredAt::crank_net;
    double gross_allowance = 0.10;
    double driveline_loss = 0.12;
    double mechanical_efficiency = 0.85;
    double brake_efficiency = 0.25;
    double lambda = 0.88;
    double idle_speed = usual_idle_speed;  // rad/s
    double inertia = 0.01;  // kg m2, crank and flywheel
    Walls walls;
    std::optional<Injector> injector;
    SparkPlan spark;  // as it was on the day; nothing to choose

    double swept_volume() const noexcept { return displacement; }
    double piston_speed(double engine_speed) const noexcept;
    double speed_limit() const noexcept { return rev_limit; }
    /// N m at the crank, net, on the day of the measurement.
    double net_torque(double engine_speed) const noexcept;

    /// The same intake: its answers share nothing that would be worth it.
    Intake worked_out(const Intake& intake, const media::Fuel&) const noexcept { return intake; }

    Mixture mixture(const Intake& intake, const media::Fuel& fuel) const noexcept;
    std::array<double, 4> fuel_demand(const media::Fuel& fuel) const noexcept;
    double exhaust_pressure(const Intake& intake, const media::Fuel& fuel) const noexcept;
    double volumetric_efficiency(const Intake& intake, const media::Fuel& fuel) const noexcept;
    double gas_demand(const Intake& intake, const media::Fuel& fuel) const noexcept;
    Temperatures temperatures(const Intake& intake, const media::Fuel& fuel) const noexcept;
    Spark best_spark(const Intake& intake, const media::Fuel& fuel) const noexcept;
    Spark choose_spark(const Intake& intake, const media::Fuel& fuel) const noexcept;
    std::optional<double> integral_requirement(const Intake& intake, const media::Fuel& fuel,
                                               double retard) const noexcept;
    Work work(const Intake& intake, const media::Fuel& fuel, double retard) const noexcept;
    ExhaustGas exhaust_gas(const Intake& intake, const media::Fuel& fuel,
                           const Work& work) const noexcept;
    std::optional<Injection> injection(const Intake& intake, const media::Fuel& fuel,
                                       const Work& work) const noexcept;
    Validity validity(const Intake& intake, const media::Fuel& fuel, double retard) const noexcept;

    static std::span<const fields::Row> rows();
    static constexpr auto class_limits = engine_limits;
    static constexpr auto class_cautions = engine_cautions;
    std::optional<fields::Violation> check() const;

private:
    double measured_air(double engine_speed, const media::Fuel& fuel) const noexcept;
};

}  // namespace windwall::engine

template <>
struct windwall::fields::Names<windwall::engine::MeasuredAt> {
    static constexpr std::array<std::string_view, 3> names{"crank_net", "crank_gross", "wheels"};
};
