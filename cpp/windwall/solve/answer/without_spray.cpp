#include "windwall/solve/answer/without_spray.hpp"

#include "windwall/solve/answer/held_spark.hpp"

#include <cmath>

namespace windwall::solve {
namespace {

/// Whether anything sprayed.
bool block_jets(vehicle::Vehicle& vehicle) {
    bool any = false;
    for (auto& entry : vehicle.charge_path)
        if (auto* jet = std::get_if<charge::EvaporativeInjection>(&entry.part.value)) {
            jet->rated_flow = 0;
            any = true;
        }
    return any;
}

}  // namespace

std::optional<double> margin_without_spray(const vehicle::Vehicle& vehicle,
                                           const FullThrottlePoint& full_throttle) {
    const engine::Spark& spark = full_throttle.point.spark;
    if (!spark.modelled) return std::nullopt;
    vehicle::Vehicle dry = with_spark(vehicle, spark.retard, spark.retard);
    if (!block_jets(dry)) return std::nullopt;
    const double margin = margin_at(dry, full_throttle.point.condition);
    return std::isfinite(margin) ? std::optional(margin) : std::nullopt;
}

}  // namespace windwall::solve
