#pragma once
#include "windwall/driveline/stance.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <array>
#include <cstddef>

namespace windwall::solve {

/// How fast the engine turns and how the driveline is set.
struct Setting {
    double engine_speed{};
    driveline::Stance stance{};
};

/// What full throttle goes through in one gear. With fixed ratios that is one stretch, the engine
/// rising from the launch speed to its limit. A variator makes it up to three: rising at the lowest
/// gearing to the speed that is held, shifting at that speed, rising at the highest gearing.
class Sweep {
public:
    Sweep(const vehicle::Vehicle& vehicle, std::size_t gear);

    std::size_t stretches() const noexcept { return count_; }
    /// Along the sweep, from 0 to stretches(): each whole number is an end of a stretch.
    Setting at(double along) const noexcept;
    /// Whether the gearing shifts in a stretch while the engine keeps its speed.
    bool shifts(std::size_t stretch) const noexcept;

private:
    struct Stretch {
        Setting from;
        Setting to;
    };
    void add(const Setting& from, const Setting& to) noexcept;

    std::array<Stretch, 3> stretches_{};
    std::size_t count_ = 0;
};

}  // namespace windwall::solve
