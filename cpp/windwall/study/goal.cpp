#include "windwall/study/goal.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"

namespace windwall::study {
namespace {

constexpr double most_power = 3;         // times what there is
constexpr double least_drag_area = 0.2;  // of what there is

}  // namespace

Missing missing_to(const vehicle::Vehicle& vehicle, double speed) {
    const solve::TopSpeed now = solve::top_speed(vehicle);
    Missing missing;
    if (!now.outcome.answered()) return missing;
    const auto excess = [&](const vehicle::Vehicle& car, double factor) {
        const solve::TopSpeed found = solve::top_speed(car, {factor, 0});
        return (found.outcome.answered() ? found.speed() : 0) - speed;
    };
    const auto with_power = [&](double factor) { return excess(vehicle, factor); };
    const auto with_drag = [&](double factor) {
        vehicle::Vehicle slimmer = vehicle;
        slimmer.body.drag_area *= factor;
        return excess(slimmer, 1);
    };
    const numerics::RootOptions close{1e-6, 0, 40};
    const solve::Point& point = now.equilibrium.full_throttle->point;
    const auto factor = numerics::find_root(with_power, 1, most_power, close);
    if (factor.converged) {
        missing.power = (factor.x - 1) * point.torque * point.condition.engine_speed;
    }
    const auto share = numerics::find_root(with_drag, least_drag_area, 1, close);
    if (share.converged) missing.drag_area = (1 - share.x) * vehicle.body.drag_area;
    return missing;
}

}  // namespace windwall::study
