#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <array>
#include <cstddef>

namespace windwall::solve {

/// How fast the engine turns and how the driveline is set.
struct DrivelineState {
    double engine_speed{};
    driveline::GearState gear_state{};
};

/// What full throttle goes through in one gear. With fixed ratios that is one stretch, the engine
/// rising from the launch speed to its limit. A variator makes it up to three: rising at the lowest
/// gearing to the speed that is held, shifting at that speed, rising at the highest gearing.
class GearRange {
public:
    GearRange(const vehicle::Vehicle& vehicle, std::size_t gear);

    std::size_t segments() const noexcept { return count_; }
    /// Along the sweep, from 0 to stretches(): each whole number is an end of a stretch.
    DrivelineState at(double along) const noexcept;
    /// Whether the gearing shifts in a stretch while the engine keeps its speed.
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
