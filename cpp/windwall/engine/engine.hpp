#pragma once
#include "windwall/engine/cylinder.hpp"
#include "windwall/engine/torque_curve.hpp"
#include "windwall/media/thermal_node.hpp"

#include <concepts>
#include <optional>

namespace windwall::engine {

/// What every kind of engine answers.
template <class T>
concept EngineKind = fields::Kind<T> &&
    requires(const T& engine, const Intake& intake, const media::Fuel& fuel, const Work& work) {
    { engine.inertia } -> std::convertible_to<double>;
    { engine.idle_speed } -> std::convertible_to<double>;
    { engine.spark } -> std::convertible_to<SparkPlan>;
    { engine.injector } -> std::convertible_to<std::optional<Injector>>;
    { engine.swept_volume() }
    noexcept->std::same_as<double>;
    { engine.speed_limit() }
    noexcept->std::same_as<double>;
    { engine.piston_speed(0.0) }
    noexcept->std::same_as<double>;
    { engine.worked_out(intake, fuel) }
    noexcept->std::same_as<Intake>;
    { engine.volumetric_efficiency(intake, fuel) }
    noexcept->std::same_as<double>;
    { engine.exhaust_pressure(intake, fuel) }
    noexcept->std::same_as<double>;
    { engine.gas_demand(intake, fuel) }
    noexcept->std::same_as<double>;
    { engine.fuel_demand(fuel) }
    noexcept->std::same_as<std::array<double, 4>>;
    { engine.temperatures(intake, fuel) }
    noexcept->std::same_as<Temperatures>;
    { engine.integral_requirement(intake, fuel, 0.0) }
    noexcept->std::same_as<std::optional<double>>;
    { engine.choose_spark(intake, fuel) }
    noexcept->std::same_as<Spark>;
    { engine.best_spark(intake, fuel) }
    noexcept->std::same_as<Spark>;
    { engine.work(intake, fuel, 0.0) }
    noexcept->std::same_as<Work>;
    { engine.exhaust_gas(intake, fuel, work) }
    noexcept->std::same_as<ExhaustGas>;
    { engine.injection(intake, fuel, work) }
    noexcept->std::same_as<std::optional<Injection>>;
    { engine.validity(intake, fuel, 0.0) }
    noexcept->std::same_as<Validity>;
};

/// Has a knock anchor, which a study may move.
template <class T>
concept Anchored = requires(const T& engine) {
    { engine.knock_anchor } -> std::convertible_to<KnockAnchor>;
};

/// Has metal and oil that take time to warm up.
template <class T>
concept Thermal = requires(const T& engine, const Intake& intake, const media::Fuel& fuel,
                           const Work& work) {
    requires media::ThermalNodes<decltype(engine.thermal_nodes(intake, fuel, work))>;
};

template <EngineKind... Kinds>
using EngineOf = fields::OneOf<Kinds...>;

using Engine = EngineOf<Cylinder, TorqueCurve>;

}  // namespace windwall::engine
