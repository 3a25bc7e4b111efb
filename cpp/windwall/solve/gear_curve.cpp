#include "windwall/solve/gear_curve.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

// Between samples the thrust is interpolated, to a percent of which this is nothing.
constexpr double agreement = 1e-4;  // of the road speed

bool silent(const Pull& pull) { return !pull.point.verdict.answered(); }

numerics::Table thrust_over_speed(const std::vector<Pull>& pulls) {
    std::vector<double> speeds, thrusts;
    for (const Pull& pull : pulls) {
        speeds.push_back(pull.road_speed);
        thrusts.push_back(pull.thrust);
    }
    return {std::move(speeds), std::move(thrusts), numerics::Interpolation::monotone};
}

}  // namespace

GearCurve::GearCurve(std::size_t gear, std::vector<Pull> pulls)
    : gear_(gear), pulls_(std::move(pulls)) {
    if (std::none_of(pulls_.begin(), pulls_.end(), silent)) thrust_ = thrust_over_speed(pulls_);
}

void GearCurve::add(const Pull& pull) {
    const auto above = std::find_if(pulls_.begin(), pulls_.end(), [&](const Pull& sampled) {
        return sampled.road_speed > pull.road_speed * (1 - 1e-9);
    });
    const bool sampled = above != pulls_.end() && above->road_speed < pull.road_speed * (1 + 1e-9);
    if (above == pulls_.begin() || above == pulls_.end() || sampled) return;
    pulls_.insert(above, pull);
    thrust_ = thrust_over_speed(pulls_);
}

const Pull& GearCurve::unanswered() const {
    return *std::find_if(pulls_.begin(), pulls_.end(), silent);
}

double GearCurve::thrust(double road_speed) const noexcept {
    return thrust_->at(road_speed).value;  // below the lowest sample the value there
}

std::vector<GearCurve> gear_curves(Puller& puller) {
    const double low = puller.lowest_engine_speed();
    const double step = (puller.highest_engine_speed() - low) / (curve_points - 1);
    std::vector<std::vector<Pull>> pulls(puller.gears());
    for (std::size_t i = 0; i < curve_points; ++i) {
        // All gears at one engine speed: from one to the next hardly anything moves.
        const double engine_speed = low + static_cast<double>(i) * step;
        for (std::size_t gear = 0; gear < pulls.size(); ++gear) {
            pulls[gear].push_back(puller.at(engine_speed, gear, agreement));
        }
    }
    std::vector<GearCurve> curves;
    for (std::size_t gear = 0; gear < pulls.size(); ++gear) {
        curves.emplace_back(gear, std::move(pulls[gear]));
    }
    return curves;
}

}  // namespace windwall::solve
