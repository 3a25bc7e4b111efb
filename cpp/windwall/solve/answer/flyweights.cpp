#include "windwall/solve/answer/flyweights.hpp"

#include "windwall/driveline/fit_flyweights.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/point/guarded.hpp"

namespace windwall::solve {
namespace {

const fields::Entry<driveline::Part>& entry_of_belt(const vehicle::Vehicle& vehicle) {
    std::size_t at = 0;
    while (!vehicle.driveline[at].part.as<driveline::BeltCvt>())
        ++at;
    return vehicle.driveline[at];
}

FlyweightFit fitted(const vehicle::Vehicle& vehicle, const WantedSpeeds& wanted) {
    const auto& [id, part] = entry_of_belt(vehicle);
    driveline::BeltCvt belt = *part.as<driveline::BeltCvt>();
    const std::size_t top = driveline::gears(vehicle.driveline) - 1;
    const double before = driveline::variator(vehicle.driveline, top)->before;
    VehicleSolver solver(vehicle);
    const Point begin = solver.at({wanted.begin, {top, 0}}).point;
    const Point end = wanted.end ? solver.at({*wanted.end, {top, 1}}).point : begin;
    FlyweightFit fit;
    fit.address = "driveline/" + id + "/flyweights";
    fit.ending = ending(begin.outcome.answered() ? end.outcome : begin.outcome);
    if (!fit.ending.answered) return fit;

    const auto at_sheave = [&](std::optional<double> speed) {
        if (speed) *speed /= before;
        return speed;
    };
    const auto made = driveline::fit_flyweights(
        belt, {wanted.begin / before, before * begin.torque, at_sheave(wanted.end),
               before * end.torque, at_sheave(wanted.engagement)});
    fit.torque = begin.torque;
    fit.weight_mass = belt.flyweights->weight_mass = made.weight_mass;
    fit.spring_preload = belt.flyweights->spring_preload = made.spring_preload;
    fit.engagement_speed = before * belt.forces()->engagement_speed();
    if (!wanted.end) return fit;
    fit.end_torque = end.torque;
    fit.ramp_closed = made.ramp_closed;
    if (made.spring_rate >= 0) fit.spring_rate = made.spring_rate;
    return fit;
}

}  // namespace

bool has_flyweights(const vehicle::Vehicle& vehicle) noexcept {
    const auto variator = driveline::variator(vehicle.driveline);
    return variator && variator->forces;
}

FlyweightFit answer_flyweights(const vehicle::Vehicle& vehicle, const WantedSpeeds& wanted) {
    return guarded([&] { return fitted(vehicle, wanted); },
                   [] { return FlyweightFit{.ending = ending(broken_off)}; });
}

}  // namespace windwall::solve
