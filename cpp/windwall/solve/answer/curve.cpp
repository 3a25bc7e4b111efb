#include "windwall/solve/answer/curve.hpp"

#include "windwall/fields/field_path.hpp"
#include "windwall/solve/answer/flyweights.hpp"
#include "windwall/solve/full_throttle/full_load_curve.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/solve/results/describe.hpp"

#include <limits>

namespace windwall::solve {
namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

/// The engine and road speed and the gearing are known even where nothing else is.
void ask(const FullThrottlePoint& full_throttle, OperatingPoint& point) {
    point.engine.speed = full_throttle.point.condition.engine_speed;
    RoadResult& road = point.road ? *point.road : point.road.emplace();
    road.speed = full_throttle.road_speed;
    road.gear = static_cast<double>(full_throttle.gear) + 1;
}

bool asked(const std::string& address) {
    return address == "engine/speed" || address == "road/speed" || address == "road/gear" ||
           address == "road/ratio";
}

class Recorder {
public:
    explicit Recorder(OperatingPoint start = {}) : point_(std::move(start)) {}

    void add(const vehicle::Balance& balance, const FullThrottlePoint& full_throttle) {
        describe(balance, full_throttle, point_);
        add(full_throttle);
    }

    /// Of a point that nothing was solved of but what was asked.
    void add(const FullThrottlePoint& full_throttle) {
        ask(full_throttle, point_);
        if (paths_.empty()) find_paths();
        const bool answered = full_throttle.point.outcome.answered();
        for (std::size_t k = 0; k < paths_.size(); ++k) {
            const bool known = answered || asked(curve_.addresses[k]);
            curve_.columns[k].push_back(known ? paths_[k].get(&point_).value_or(unknown) : unknown);
        }
        curve_.status.push_back(full_throttle.point.outcome.status);
    }

    Curve take() { return std::move(curve_); }

private:
    void find_paths() {
        paths_ = fields::all_numbers(fields::group_type<OperatingPoint>, &point_);
        for (const fields::FieldPath& path : paths_)
            curve_.addresses.push_back(path.text());
        curve_.columns.resize(paths_.size());
    }

    OperatingPoint point_;
    std::vector<fields::FieldPath> paths_;
    Curve curve_;
};

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

Curve broken(std::size_t gear) {
    FullThrottlePoint nothing;
    nothing.gear = gear;
    nothing.road_speed = nothing.point.condition.engine_speed = unknown;
    nothing.point.outcome = broken_off;
    OperatingPoint blank;
    blank.road.emplace().ratio = unknown;
    Recorder recorder(std::move(blank));
    recorder.add(nothing);
    return recorder.take();
}

}  // namespace

Curve full_throttle_curve(const vehicle::Vehicle& vehicle, std::optional<std::size_t> gear,
                          std::size_t points) {
    return guarded([&] { return recorded(vehicle, gear, points); },
                   [&] { return broken(gear.value_or(0)); });
}

}  // namespace windwall::solve
