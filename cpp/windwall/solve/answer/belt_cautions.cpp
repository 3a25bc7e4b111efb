#include "windwall/solve/answer/belt_cautions.hpp"

#include "windwall/driveline/train.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr double shifted = 1 - 1e-9;

/// The highest position that full throttle gets to in any gear before the engine's limit.
double reached(const TopSpeed& found) {
    double most = 0;
    for (const TractiveEffortCurve& curve : found.curves)
        most = std::max(most, curve.highest_position());
    return most;
}

}  // namespace

std::vector<Caution> belt_cautions(const TopSpeed& found, const vehicle::Vehicle& vehicle) {
    std::vector<Caution> cautions;
    for (const auto& [id, part] : vehicle.driveline) {
        const auto* belt = part.as<driveline::BeltCvt>();
        if (belt == nullptr) continue;
        const std::string address = "driveline/" + id;
        if (belt->reached_ratio() > belt->high_ratio)
            cautions.push_back({CautionKind::short_travel, address + "/sheaves/travel",
                                belt->reached_ratio(), belt->high_ratio});
        if (!found.curves.empty() && reached(found) < shifted)
            cautions.push_back({CautionKind::unshifted, address, belt->ratio({0, reached(found)}),
                                belt->reached_ratio()});
    }
    return cautions;
}

}  // namespace windwall::solve
