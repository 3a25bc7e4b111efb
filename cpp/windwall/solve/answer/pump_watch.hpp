#pragma once
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/caution.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace windwall::solve {

/// Looks at the pumps of one vehicle at every full-throttle point: whether one never runs, and
/// whether one puts the fire out.
class PumpWatch : public Watch {
public:
    /// `next` looks at the same points; it is borrowed, as the vehicle is.
    PumpWatch(const vehicle::Vehicle& vehicle, Watch& next);

    void read(const vehicle::Balance& balance, FullThrottlePoint& full_throttle) override;
    void read_road(const vehicle::Vehicle& vehicle, FullThrottlePoint& full_throttle) override;
    std::vector<Caution> cautions() const;

private:
    struct Drowned {
        double engine_speed{};
        double liquid{};  // over dry air
    };
    struct Pump {
        std::size_t part{};
        std::optional<double> most_above{};  // Pa that its switch read above where it starts
        bool read = false;                   // at a point that was answered
        bool ran = false;
        std::optional<Drowned> drowned{};  // at the highest engine speed
    };

    const vehicle::Vehicle* vehicle_;
    Watch* next_;
    std::vector<Pump> pumps_;
};

}  // namespace windwall::solve
