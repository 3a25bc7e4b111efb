#include "windwall/solve/answer/belt_cautions.hpp"

#include "windwall/driveline/train.hpp"

#include <algorithm>
#include <numbers>
#include <optional>

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

constexpr double usual_idle = 1000 * std::numbers::pi / 30;  // rad/s

double idle_speed(const vehicle::Vehicle& vehicle) {
    return vehicle.engine.visit([](const auto& engine) {
        if constexpr (requires { engine.idle_speed; }) return double(engine.idle_speed);
        return usual_idle;
    });
}

/// Engine speed at which a belt grips that the engine drives by itself; nothing where a clutch lets
/// it go, or nobody knows.
std::optional<double> grips_at(const vehicle::Vehicle& vehicle, std::size_t at) {
    if (driveline::parting(vehicle.driveline) != at) return std::nullopt;
    const auto* belt = vehicle.driveline[at].part.as<driveline::BeltCvt>();
    const double before = driveline::variator(vehicle.driveline)->before;
    return before *
           (belt->engagement_speed ? *belt->engagement_speed : belt->forces()->engagement_speed());
}

}  // namespace

std::vector<Caution> belt_cautions(const TopSpeed& found, const vehicle::Vehicle& vehicle) {
    std::vector<Caution> cautions;
    for (std::size_t at = 0; at < vehicle.driveline.size(); ++at) {
        const auto& [id, part] = vehicle.driveline[at];
        const auto* belt = part.as<driveline::BeltCvt>();
        if (belt == nullptr) continue;
        const std::string address = "driveline/" + id;
        if (belt->reached_ratio() > belt->high_ratio)
            cautions.push_back({CautionKind::short_travel, address + "/sheaves/travel",
                                belt->reached_ratio(), belt->high_ratio});
        if (!found.curves.empty() && reached(found) < shifted)
            cautions.push_back({CautionKind::unshifted, address, belt->ratio({0, reached(found)}),
                                belt->reached_ratio()});
        const auto grips = grips_at(vehicle, at);
        if (grips && *grips < idle_speed(vehicle))
            cautions.push_back({CautionKind::early_grip, address, *grips, idle_speed(vehicle)});
    }
    return cautions;
}

}  // namespace windwall::solve
