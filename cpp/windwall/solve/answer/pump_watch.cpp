#include "windwall/solve/answer/pump_watch.hpp"

#include <algorithm>
#include <string>

namespace windwall::solve {
namespace {

constexpr double mostly_out = 0.5;  // share of the charge that still burns

std::optional<charge::Spray> spray(const vehicle::Balance& balance, std::size_t part) {
    const vehicle::Station& station = balance.stations()[part];
    return balance.vehicle().charge_path[part].part.visit(
        [&]<class Part>(const Part& nozzle) -> std::optional<charge::Spray> {
            if constexpr (charge::Spraying<Part>)
                return nozzle.spray(station.inlet, balance.surroundings_of(station));
            return std::nullopt;
        });
}

}  // namespace

PumpWatch::PumpWatch(const vehicle::Vehicle& vehicle, Watch& next)
    : vehicle_(&vehicle), next_(&next) {
    for (std::size_t i = 0; i < vehicle.charge_path.size(); ++i) {
        const bool sprays = vehicle.charge_path[i].part.visit(
            []<class Part>(const Part&) { return charge::Spraying<Part>; });
        if (sprays) pumps_.push_back({.part = i});
    }
}

void PumpWatch::read(const vehicle::Balance& balance, FullThrottlePoint& full_throttle) {
    next_->read(balance, full_throttle);
    const Point& point = full_throttle.point;
    if (!point.outcome.answered()) return;
    for (Pump& pump : pumps_) {
        const auto made = spray(balance, pump.part);
        pump.read = true;
        if (made->above_start)
            pump.most_above =
                std::max(pump.most_above.value_or(*made->above_start), *made->above_start);
        pump.ran = pump.ran || made->running > 0;
        if (!(made->flow > 0) || point.work.burnt > mostly_out) continue;
        const double speed = point.condition.engine_speed;
        if (!pump.drowned || speed > pump.drowned->engine_speed)
            pump.drowned = {speed, made->flow / balance.manifold().dry_air};
    }
}

void PumpWatch::read_road(const vehicle::Vehicle& vehicle, FullThrottlePoint& full_throttle) {
    next_->read_road(vehicle, full_throttle);
}

std::vector<Caution> PumpWatch::cautions() const {
    std::vector<Caution> made;
    for (const Pump& pump : pumps_) {
        const std::string address =
            "charge_path/" + vehicle_->charge_path[pump.part].id + "/liquid_flow";
        const bool by_pressure = pump.most_above && *pump.most_above <= 0;
        if (by_pressure) made.push_back({CautionKind::idle_pump, address, -*pump.most_above});
        if (pump.read && !pump.ran && !by_pressure)
            made.push_back({CautionKind::untriggered_pump, address});
        if (pump.drowned)
            made.push_back({CautionKind::drowned,
                            address,
                            pump.drowned->liquid,
                            {},
                            {},
                            pump.drowned->engine_speed});
    }
    return made;
}

}  // namespace windwall::solve
