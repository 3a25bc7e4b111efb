#pragma once
#include "windwall/numerics/table.hpp"
#include "windwall/solve/full_throttle/full_load_curve.hpp"

#include <array>
#include <optional>
#include <vector>

namespace windwall::solve {

/// One place on a gear's curve, read off the engine curve.
struct CurvePoint {
    double along{};  // of the gear's range
    double road_speed{};
    double thrust{};
    double excess_force{};
    bool grips = true;
    bool kink = false;  // the slope of the thrust may jump here
};

/// What the engine curve says for a place along a gear's range.
CurvePoint read(const FullLoadCurve& engine, const VehicleSolver& solver, std::size_t gear,
                double along) noexcept;

/// How closely a curve is sampled: to be solved on, or to tell vehicles apart by per cents.
enum class Sampling { close, rough };

/// Full throttle in one gear from launch to the rev limit: the engine curve taken to the road at
/// many states of the driveline, and the thrust between them by a monotone cubic over road speed,
/// from kink to kink. Below the lowest speed the clutch slips at the launch speed and the thrust is
/// the one there.
class TractiveEffortCurve {
public:
    TractiveEffortCurve(const FullLoadCurve& engine, const VehicleSolver& solver, std::size_t gear,
                        Sampling sampling = Sampling::close);

    /// Takes the thrust of the whole gear to where it passes through a solved full-throttle point,
    /// which is a matter of parts in ten thousand.
    void pass_through(const FullThrottlePoint& full_throttle) noexcept;

    std::size_t gear() const noexcept { return gear_; }
    const std::vector<CurvePoint>& samples() const noexcept { return samples_; }
    double low_speed() const noexcept { return samples_.front().road_speed; }
    double high_speed() const noexcept { return samples_.back().road_speed; }
    bool reaches(double road_speed) const noexcept { return road_speed < high_speed(); }
    double thrust(double road_speed) const noexcept;
    /// Where along the gear's range a road speed is driven.
    double along(double road_speed) const noexcept;
    /// Which piece of the curve a speed is on: 0 while the clutch slips, then one for each stretch
    /// of the range. From one to the next mass and slope may jump.
    std::size_t piece(double road_speed) const noexcept;
    /// Road speed at which a piece gives way to the next; infinite for the last one.
    double end_of_piece(std::size_t piece) const noexcept;
    /// How far a variator shifts in the gear before its range ends; 1 without one.
    double highest_position() const noexcept { return highest_position_; }
    /// Mass that the thrust accelerates, kg.
    double accelerated_mass(double road_speed) const noexcept;

private:
    std::size_t gear_;
    std::vector<CurvePoint> samples_;
    std::vector<numerics::Table> thrust_;  // from kink to kink
    double scale_ = 1;
    double highest_position_ = 1;
    std::size_t pieces_ = 1;
    std::array<double, 4> ends_{};  // road speeds
    std::array<double, 4> masses_{};
    std::array<std::optional<numerics::Table>, 4> varying_masses_{};  // over road speed
};

/// One curve for every gear of the vehicle.
std::vector<TractiveEffortCurve> tractive_effort_curves(const FullLoadCurve& engine,
                                                        const VehicleSolver& solver,
                                                        Sampling sampling = Sampling::close);

}  // namespace windwall::solve
