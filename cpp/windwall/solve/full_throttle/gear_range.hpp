#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace windwall::solve {

/// How fast the engine turns and how the driveline is set.
struct DrivelineState {
    double engine_speed{};
    driveline::GearState gear_state{};
};

/// What full throttle goes through in one gear. With fixed ratios that is one segment, the engine
/// rising from the launch speed to a ceiling, its limit unless it has no answer up there. A
/// variator makes it up to three: rising at the lowest gearing to the speed that is held, shifting
/// at that speed, rising at the highest gearing.
class GearRange {
public:
    /// Up to the engine's limit, or to a ceiling below it.
    GearRange(const vehicle::Vehicle& vehicle, std::size_t gear);
    GearRange(const vehicle::Vehicle& vehicle, std::size_t gear, double ceiling);

    std::size_t segments() const noexcept { return count_; }
    /// Where it ends: segments(), as a number to go along to.
    double end() const noexcept { return static_cast<double>(count_); }
    /// From 0 to end(): each whole number is an end of a segment.
    DrivelineState at(double along) const noexcept;
    /// How the driveline is set at an engine speed; at the one that is held, fully shifted.
    DrivelineState at_engine_speed(double engine_speed) const noexcept;
    /// How it is set wherever the range has that engine speed: at both ends and in the middle of a
    /// shift, once elsewhere.
    std::vector<driveline::GearState> states_at(double engine_speed) const;
    /// Whether the gearing shifts in a segment while the engine keeps its speed.
    bool shifts(std::size_t segment) const noexcept;

private:
    struct Segment {
        DrivelineState from;
        DrivelineState to;
    };
    void add(const DrivelineState& from, const DrivelineState& to) noexcept;

    std::array<Segment, 3> segments_{};
    std::size_t count_ = 0;
};

}  // namespace windwall::solve
