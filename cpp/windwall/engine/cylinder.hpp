#pragma once
#include "windwall/engine/accessories.hpp"
#include "windwall/engine/breathing.hpp"
#include "windwall/engine/combustion.hpp"
#include "windwall/engine/cooling.hpp"
#include "windwall/engine/design.hpp"
#include "windwall/engine/dilution.hpp"
#include "windwall/engine/end_gas.hpp"
#include "windwall/engine/evaporation.hpp"
#include "windwall/engine/exhaust.hpp"
#include "windwall/engine/exhaust_gas.hpp"
#include "windwall/engine/friction.hpp"
#include "windwall/engine/heat.hpp"
#include "windwall/engine/injector.hpp"
#include "windwall/engine/intake.hpp"
#include "windwall/engine/knock.hpp"
#include "windwall/engine/limits.hpp"
#include "windwall/engine/mixture.hpp"
#include "windwall/engine/oil.hpp"
#include "windwall/engine/rated.hpp"
#include "windwall/engine/spark.hpp"
#include "windwall/engine/temperatures.hpp"
#include "windwall/engine/usual.hpp"
#include "windwall/engine/validity.hpp"
#include "windwall/engine/valves.hpp"
#include "windwall/engine/work.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/fuel.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// Four-stroke spark-ignition engine from its cylinders. All methods are explicit in the intake
/// state and in the flow that its charge carries.
struct Cylinder {
    static constexpr std::string_view kind = "cylinder";
    static constexpr std::string_view description =
        "Four-stroke spark-ignition engine, from bore, stroke and compression ratio.";

    double cylinders{};
    double bore{};    // m
    double stroke{};  // m
    double compression_ratio{};
    double rev_limit{};  // rad/s
    double lambda = 0.88;
    std::optional<double> head_temperature;  // K; at equilibrium where not stated
    double octane_sensitivity_weight = 0.5;
    double idle_speed = usual_idle_speed;  // rad/s
    double inertia = 0.01;                 // kg m2, crank and flywheel
    Design design;
    std::optional<Rated> rated;
    Valves valves;
    Breathing breathing;
    Combustion combustion;
    Friction friction;
    Exhaust exhaust;
    Accessories accessories;
    SparkPlan spark;
    KnockAnchor knock_anchor;
    Walls walls;
    Cooling cooling;
    Oil oil;
    Evaporation evaporation;
    std::optional<Injector> injector;

    double swept_volume() const noexcept;                      // m3, all cylinders
    double piston_speed(double engine_speed) const noexcept;   // m/s, mean
    double speed_limit() const noexcept { return rev_limit; }  // rad/s

    /// The same intake with what all answers below share, so that asking several of them costs
    /// less.
    Intake worked_out(Intake intake, const media::Fuel& fuel) const noexcept;

    Mixture mixture(const Intake& intake, const media::Fuel& fuel) const noexcept;
    /// kg of each liquid per kg of dry air that lambda asks for, by media::Vapour: what a
    /// carburettor set for this engine meters.
    std::array<double, 4> fuel_demand(const media::Fuel& fuel) const noexcept;
    /// Pa absolute, behind the valves, from the flow that the charge carries.
    double exhaust_pressure(const Intake& intake, const media::Fuel& fuel) const noexcept;
    /// Gas drawn over the gas that fills the swept volume at manifold pressure and temperature.
    double volumetric_efficiency(const Intake& intake, const media::Fuel& fuel) const noexcept;
    /// kg/s of moist gas that the engine draws from this manifold.
    double gas_demand(const Intake& intake, const media::Fuel& fuel) const noexcept;

    /// Of head and oil, from the flow that the charge carries.
    Temperatures temperatures(const Intake& intake, const media::Fuel& fuel) const noexcept;

    /// Head, oil and block as lumps, with what warms and cools them there at that work; where it
    /// burns nothing the flows alone say how much heat the head passes on.
    std::array<media::LumpedNode, 3> thermal_nodes(const Intake& intake, const media::Fuel& fuel,
                                                   const Work& work) const noexcept;

    /// What the spark of best torque leaves.
    Spark best_spark(const Intake& intake, const media::Fuel& fuel) const noexcept;
    Spark choose_spark(const Intake& intake, const media::Fuel& fuel) const noexcept;
    /// What the end gas goes through at a spark `retard` rad after the one of best torque.
    EndGas end_gas(const Intake& intake, const media::Fuel& fuel, double retard) const noexcept;
    /// The octane number that the end gas asks for by its ignition delay, anchored at the same
    /// point as the rule; empty where not modelled.
    std::optional<double> integral_requirement(const Intake& intake, const media::Fuel& fuel,
                                               double retard) const noexcept;
    /// At a spark `retard` rad after the one of best torque.
    Work work(const Intake& intake, const media::Fuel& fuel, double retard) const noexcept;
    /// What leaves through the valves, by the engine's own energy balance.
    ExhaustGas exhaust_gas(const Intake& intake, const media::Fuel& fuel,
                           const Work& work) const noexcept;
    /// Empty where there are no injectors.
    std::optional<Injection> injection(const Intake& intake, const media::Fuel& fuel,
                                       const Work& work) const noexcept;
    Validity validity(const Intake& intake, const media::Fuel& fuel, double retard) const noexcept;

    static std::span<const fields::Row> rows();
    static constexpr auto class_limits = engine_limits;
    static constexpr auto class_cautions = engine_cautions;

private:
    double pressure_behind(const Intake& intake, const Mixture& burnt) const noexcept;
    double filling(const Intake& intake, const Mixture& burnt, double ratio) const noexcept;
    double head(const Intake& intake, const Mixture& burnt) const noexcept;
    double head(const Intake& intake, const Mixture& burnt, const HeadState& known) const noexcept;
    double oil_temperature(const Intake& intake, const Mixture& burnt) const noexcept;
    EndGas end_gas(const Intake& intake, const Mixture& burnt, double retard,
                   double ratio) const noexcept;
    double anchored_delay_requirement() const noexcept;
    double residual(const Intake& intake, const Mixture& burnt, double ratio) const noexcept;
    AtValve at_valve(const Intake& intake, const Mixture& burnt) const noexcept;
    double drops_cooling(const Intake& intake, const Mixture& burnt) const noexcept;
    Burning burning(const Intake& intake, const Mixture& burnt, double ratio) const noexcept;
    double octane_requirement(const Intake& intake, const Mixture& burnt) const noexcept;
    HeadState head_state(const Intake& intake, const Mixture& burnt) const noexcept;
    HeadState known_head_state() const noexcept;
    Cooling measured_cooling() const noexcept;
    double known_speed() const noexcept { return cooling.known_engine_speed.value_or(rev_limit); }
    double heat_to_oil(double piston_speed, double released, double engine_speed) const noexcept;
    double released(const Intake& intake, const Mixture& burnt) const noexcept;
    double known_released(const HeadState& known) const noexcept;
    double known_head_heat(const HeadState& known) const noexcept;
    ExhaustGas exhaust_gas(const Intake& intake, const Work& work, const HeadState& known,
                           double metal) const noexcept;
    media::LumpedNode head_node(const Intake& intake, const Mixture& burnt, const Work& work,
                                const HeadState& known) const noexcept;
    media::LumpedNode oil_node(const Intake& intake, const Mixture& burnt,
                               const HeadState& known) const noexcept;
};

}  // namespace windwall::engine
