#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/numerics/table.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace windwall::solve {

/// How fast the engine turns and how the driveline is set.
struct DrivelineState {
    double engine_speed{};
    driveline::GearState gear_state{};
};

/// Torque at the flywheel, N m, that full throttle gives in a state of the driveline.
using FullThrottleTorque = std::function<double(const DrivelineState&)>;

/// What full throttle goes through in one gear. With fixed ratios that is one segment, the engine
/// rising from the launch speed to a ceiling, its limit unless it has no answer up there. A
/// variator makes it up to three: rising at the lowest gearing to the speed at which it begins to
/// shift, shifting with the engine held where it belongs, rising at the highest gearing. A shift
/// that asks for more than the ceiling ends there.
class GearRange {
public:
    /// Up to the engine's limit, for the torque that an engine of its size usually gives.
    GearRange(const vehicle::Vehicle& vehicle, std::size_t gear);
    /// Up to a ceiling not above the limit.
    GearRange(const vehicle::Vehicle& vehicle, std::size_t gear, double ceiling);
    /// Where weights and springs hold the engine as its torque lets them.
    GearRange(const vehicle::Vehicle& vehicle, std::size_t gear, double ceiling,
              const FullThrottleTorque& torque);

    std::size_t segments() const noexcept { return count_; }
    /// Where it ends: segments(), as a number to go along to.
    double end() const noexcept { return static_cast<double>(count_); }
    /// From 0 to end(): each whole number is an end of a segment.
    DrivelineState at(double along) const noexcept;
    /// How it is set wherever the range has an engine speed: at both ends and in the middle of a
    /// shift that holds it, once elsewhere; at the nearer end where the range has it nowhere.
    std::vector<driveline::GearState> states_at(double engine_speed) const;
    /// Whether the gearing shifts in a segment.
    bool shifts(std::size_t segment) const noexcept;
    /// How far the engine's speed rises while the road's does, both as logarithms: 1 at a fixed
    /// gearing, 0 where a shift holds the engine at one speed, between both along a line.
    double crank_share(double along) const noexcept;

private:
    struct Segment {
        DrivelineState from;
        DrivelineState to;
        std::optional<numerics::Table> speeds{};  // over position, where the engine's changes
    };
    std::size_t segment_at(double along) const noexcept;
    double engine_speed(const Segment& segment, double part) const noexcept;
    double share_of(const Segment& segment, double part) const noexcept;
    void add_crossings(std::size_t segment, double engine_speed,
                       std::vector<driveline::GearState>& found) const;
    void add(const DrivelineState& from, const DrivelineState& to);
    void add_shift(std::size_t gear, const std::vector<double>& positions,
                   const std::vector<double>& speeds, double top);

    std::array<Segment, 3> segments_{};
    std::size_t count_ = 0;
    double shifted_ = 0;  // logarithm of the lowest over the highest reduction
};

/// Engine speeds at which the variator begins to shift and has shifted, for the torque that an
/// engine of its size usually gives; nothing without a variator.
std::optional<std::array<double, 2>> usual_shift(const vehicle::Vehicle& vehicle) noexcept;

}  // namespace windwall::solve
