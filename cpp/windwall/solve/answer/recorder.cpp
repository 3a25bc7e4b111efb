#include "windwall/solve/answer/recorder.hpp"

#include "windwall/solve/results/describe.hpp"

#include <limits>

namespace windwall::solve {
namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

/// The engine and road speed and the gearing are known even where nothing else is.
void ask(const FullThrottlePoint& on_road, OperatingPoint& point) {
    point.engine.speed = on_road.point.condition.engine_speed;
    RoadResult& road = point.road ? *point.road : point.road.emplace();
    road.speed = on_road.road_speed;
    road.gear = static_cast<double>(on_road.gear) + 1;
}

bool asked(const std::string& address) {
    return address == "engine/speed" || address == "road/speed" || address == "road/gear" ||
           address == "road/ratio";
}

}  // namespace

void Recorder::add(const vehicle::Balance& balance, const FullThrottlePoint& on_road) {
    describe(balance, on_road, point_);
    add(on_road);
}

void Recorder::add(const FullThrottlePoint& on_road) {
    ask(on_road, point_);
    write(on_road.point.outcome);
}

void Recorder::add(const vehicle::Balance& balance, const Point& point) {
    describe(balance, point, point_);
    write(point.outcome);
}

void Recorder::write(const Outcome& outcome) {
    if (paths_.empty()) find_paths();
    for (std::size_t k = 0; k < paths_.size(); ++k) {
        const bool known = outcome.answered() || asked(curve_.addresses[k]);
        curve_.columns[k].push_back(known ? paths_[k].get(&point_).value_or(unknown) : unknown);
    }
    curve_.status.push_back(outcome.status);
}

void Recorder::find_paths() {
    paths_ = fields::all_numbers(fields::group_type<OperatingPoint>, &point_);
    for (const fields::FieldPath& path : paths_)
        curve_.addresses.push_back(path.text());
    curve_.columns.resize(paths_.size());
}

Curve broken_curve(std::size_t gear) {
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

}  // namespace windwall::solve
