#pragma once
#include "windwall/numerics/table.hpp"
#include "windwall/solve/pull.hpp"

#include <optional>
#include <vector>

namespace windwall::solve {

inline constexpr std::size_t curve_points = 10;  // engine speeds a gear is sampled at

/// Full throttle in one gear from the launch speed to the rev limit, and the thrust in between by a
/// monotone cubic over road speed. Below the lowest sample the clutch slips at the launch speed and
/// the thrust is the one there.
class GearCurve {
public:
    GearCurve(std::size_t gear, std::vector<Pull> pulls);

    /// Adds a solved pull between the samples, so that the curve passes through it.
    void add(const Pull& pull);

    std::size_t gear() const noexcept { return gear_; }
    const std::vector<Pull>& pulls() const noexcept { return pulls_; }
    bool answered() const noexcept { return thrust_.has_value(); }
    /// The first pull that has no answer; only where not all are answered.
    const Pull& unanswered() const;
    double low_speed() const noexcept { return pulls_.front().road_speed; }
    double high_speed() const noexcept { return pulls_.back().road_speed; }
    bool reaches(double road_speed) const noexcept { return road_speed < high_speed(); }
    double thrust(double road_speed) const noexcept;

private:
    std::size_t gear_;
    std::vector<Pull> pulls_;
    std::optional<numerics::Table> thrust_;
};

/// One curve for every gear of the vehicle.
std::vector<GearCurve> gear_curves(Puller& puller);

}  // namespace windwall::solve
