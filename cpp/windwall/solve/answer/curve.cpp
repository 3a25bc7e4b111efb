#include "windwall/solve/answer/curve.hpp"

#include "windwall/solve/answer/flyweights.hpp"
#include "windwall/solve/full_throttle/full_load_curve.hpp"
#include "windwall/solve/answer/recorder.hpp"
#include "windwall/solve/point/guarded.hpp"

namespace windwall::solve {
namespace {

Curve recorded(const vehicle::Vehicle& vehicle, std::optional<std::size_t> gear,
               std::size_t points) {
    VehicleSolver solver(vehicle);
    if (has_flyweights(vehicle)) FullLoadCurve{solver};  // says where it shifts
    Recorder recorder;
    const std::size_t first = gear.value_or(0);
    const std::size_t last = gear ? *gear + 1 : solver.gears();
    for (std::size_t used = first; used < last; ++used) {
        const GearRange& gear_range = solver.gear_range(used);
        const double step = static_cast<double>(gear_range.segments()) /
                            static_cast<double>(points > 1 ? points - 1 : 1);
        for (std::size_t i = 0; i < points; ++i) {
            const FullThrottlePoint full_throttle =
                solver.at(gear_range.at(static_cast<double>(i) * step));
            recorder.add(solver.point_solver().balance(), full_throttle);
        }
    }
    return recorder.take();
}

}  // namespace

Curve full_throttle_curve(const vehicle::Vehicle& vehicle, std::optional<std::size_t> gear,
                          std::size_t points) {
    return guarded([&] { return recorded(vehicle, gear, points); },
                   [&] { return broken_curve(gear.value_or(0)); });
}

}  // namespace windwall::solve
