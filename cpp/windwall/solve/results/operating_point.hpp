#pragma once
#include "windwall/solve/results/part_results.hpp"
#include "windwall/solve/results/variator_result.hpp"

#include <optional>
#include <span>
#include <vector>

/// What one operating point answers, row by row: the addresses of limits, of observations and of
/// everything that is printed.
namespace windwall::solve {

struct ManifoldResult {
    static constexpr std::string_view description = "The charge as the engine draws it.";
    double pressure{};
    double boost{};
    double temperature{};
    double air_flow{};

    static std::span<const fields::Row> rows();
};

struct EngineResult {
    static constexpr std::string_view description =
        "The engine, at the flywheel behind the blower's belt.";
    double speed{};
    double opening{};  // held at, where knock does not allow what was asked
    double piston_speed{};
    double torque{};
    double power{};
    double brake_mean_pressure{};
    double volumetric_efficiency{};
    double exhaust_pressure{};
    double fuel_flow{};
    double lambda{};
    double exhaust_gas_temperature{};
    double heat_to_walls{};
    std::optional<double> head_temperature;  // empty where the engine says nothing of it
    std::optional<double> oil_temperature;

    static std::span<const fields::Row> rows();
};

struct KnockResult {
    static constexpr std::string_view description =
        "The spark and what it leaves to knock: the middle of a band, never a promise.";
    double margin{};
    double requirement{};
    double fuel_index{};
    double retard{};
    double probability{};
    double margin_at_best_spark{};
    double probability_at_best_spark{};
    double retard_left{};
    double enrichment{};
    double enrichment_left{};
    std::optional<double> integral_requirement;
    std::optional<double> integral_margin;
    std::optional<double> water_per_fuel;  // kg/kg; empty where nothing sprays

    static std::span<const fields::Row> rows();
};

struct InjectorResult {
    static constexpr std::string_view description =
        "The injectors of the engine's own fuel system.";
    double duty{};
    double pulse_width{};
    double pressure_drop{};

    static std::span<const fields::Row> rows();
};

struct RoadResult {
    static constexpr std::string_view description =
        "What reaches the road, and what holds back there.";
    double speed{};
    double gear{};   // from 1
    double ratio{};  // overall
    double thrust{};
    double excess_force{};
    double air{};
    double rolling{};
    double grade{};

    static std::span<const fields::Row> rows();
};

struct TyreResult {
    static constexpr std::string_view description = "The driven tyres.";
    double slip{};
    double load{};  // kg on one of them

    static std::span<const fields::Row> rows();
};

/// Everything, for a vehicle held at one condition.
struct OperatingPoint {
    static constexpr std::string_view description = "One operating point.";
    ManifoldResult manifold;
    std::vector<fields::Entry<PartResult>> charge_path;
    EngineResult engine;
    std::optional<KnockResult> knock;  // empty where the engine says nothing of it
    std::optional<InjectorResult> injector;
    std::optional<RoadResult> road;  // empty where the engine alone was asked for
    std::optional<TyreResult> tyres;
    std::optional<VariatorResult> variator;  // empty where all ratios are fixed

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
