#include "windwall/solve/gear_curve.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

std::vector<Pull> sample(Puller& puller, std::size_t gear) {
    std::vector<Pull> pulls;
    pulls.reserve(curve_points);
    const double low = puller.lowest_engine_speed();
    const double step = (puller.highest_engine_speed() - low) / (curve_points - 1);
    for (std::size_t i = 0; i < curve_points; ++i) {
        pulls.push_back(puller.at(low + static_cast<double>(i) * step, gear));
    }
    return pulls;
}

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

GearCurve::GearCurve(Puller& puller, std::size_t gear) : gear_(gear), pulls_(sample(puller, gear)) {
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
    std::vector<GearCurve> curves;
    for (std::size_t gear = 0; gear < puller.gears(); ++gear)
        curves.emplace_back(puller, gear);
    return curves;
}

}  // namespace windwall::solve
