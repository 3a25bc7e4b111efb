#pragma once
#include "windwall/driveline/belt_losses.hpp"
#include "windwall/driveline/flyweights.hpp"
#include "windwall/driveline/gear_state.hpp"
#include "windwall/driveline/shaft.hpp"
#include "windwall/driveline/sheaves.hpp"
#include "windwall/driveline/torque_cam.hpp"
#include "windwall/driveline/variator.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <cstddef>
#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::driveline {

/// A rubber belt between two pairs of sheaves. While it shifts, its weights and springs hold the
/// speed of its driving sheave: at one speed, along a line between two that were measured, or where
/// their forces balance, as far as the builder knows them. What it loses is stated at the torque it
/// is rated for.
struct BeltCvt {
    static constexpr std::string_view kind = "belt_cvt";
    static constexpr std::string_view description =
        "Rubber-belt drive of continuously variable ratio that holds the engine's speed while it "
        "shifts.";
    /// Torque share of the capacity from which on the belt slips more than in proportion, and the
    /// share of speed it loses in addition at its capacity; no source.
    static constexpr double slip_knee = 0.8, slip_at_capacity = 0.10;

    double low_ratio{};                     // driven over driving radius, largest
    double high_ratio{};                    // and smallest
    std::optional<double> shift_speed;      // rad/s of the driving sheave, where it begins to shift
    std::optional<double> shift_end_speed;  // and where it has shifted; the same if not stated
    double rated_torque{};                  // N m at the driving sheave
    double drag_share = 0.05;
    double load_loss = 0.07;
    double ratio_loss = 0.03;
    double churning_torque = 0;               // N m at 5000 rpm
    double slip = 0.02;                       // of speed, at the rated torque
    std::optional<double> slip_torque;        // N m at the driving sheave
    std::optional<double> engagement_speed;   // rad/s of the driving sheave
    std::optional<double> glaze_temperature;  // K
    std::optional<Sheaves> sheaves;
    std::optional<Flyweights> flyweights;
    std::optional<TorqueCam> torque_cam;
    double inertia = 0.008;         // kg m2, driving sheave
    double driven_inertia = 0.010;  // kg m2, driven sheave
    double belt_mass = 0.5;         // kg
    double to_air = 25;             // W/K

    std::size_t gears() const noexcept { return 1; }
    /// Where nothing slips.
    double ratio(GearState gear_state) const noexcept;
    /// The smallest reduction that the travel of its driving sheave lets it reach.
    double reached_ratio() const noexcept;
    Variator variator() const noexcept;
    /// Weights, springs and cam, where all are stated.
    std::optional<ForceBalance> forces() const noexcept;
    /// Torque beyond the capacity does not get through; what is left over heats the belt. The
    /// output turns slower than the ratio says by the slip.
    Shaft drive(const Shaft& in, GearState gear_state) const noexcept;
    std::optional<double> holds(double speed, GearState gear_state) const noexcept {
        return capacity(speed, gear_state);
    }
    /// Torque at the driving sheave, N m, from which on the belt slips through at a speed in rad/s:
    /// what is stated, or what the clamp force holds; nothing where neither is known.
    std::optional<double> capacity(double speed, GearState gear_state) const noexcept;
    /// Force along the driving sheave that clamps the belt, N; nothing where it is not known.
    std::optional<double> clamp_force(const Shaft& in, GearState gear_state) const noexcept;
    /// Speed, rad/s, at which it takes the belt along at the start, for a torque that arrives; as
    /// stated, or where the weights clamp enough. Nothing where neither says so.
    std::optional<double> taking_hold(double torque) const noexcept;
    /// Share of speed lost to slip when it passes what a shaft brings, N m and rad/s; below 0.65.
    double slip_share(const Shaft& in, GearState gear_state) const noexcept;
    /// Output power over input power while it drives, from 0 to 1.
    double efficiency(const Shaft& in, GearState gear_state) const noexcept;

    std::optional<fields::Violation> check() const;
    /// The belt, warmed by the watts it loses.
    std::array<media::LumpedNode, 1> thermal_nodes(double loss,
                                                   double air_temperature) const noexcept;
    static std::span<const fields::Row> rows();
    // K; standard belts are given 85 degC, heat-resisting ones 110, and for every 10 K more in the
    // belt half the life (technical pages of a belt maker)
    static constexpr std::array class_limits{fields::ClassLimit{
        .result = "/variator/temperature",
        .why = "rubber of the belt hardens, cracks and glazes: life halves with every 10 K more",
        .max = 273.15 + 110,
        .unless_rated = true}};

private:
    BeltLosses losses() const noexcept;
};

}  // namespace windwall::driveline
