#include "windwall/solve/answer/margins.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/answer/held_spark.hpp"

#include <cmath>
#include <numbers>

namespace windwall::solve {
namespace {

using vehicle::Vehicle;

constexpr double hottest = 150;                           // K added to the charge
constexpr double earliest = 40 * std::numbers::pi / 180;  // rad of advance
constexpr double fastest = 1.0;                           // e-folds of the drive ratio
constexpr int steps = 10;           // outwards over the range, until the margin changes its sign
constexpr double tolerance = 1e-8;  // of the range

/// The least move away from nothing at which the margin is zero: onwards while there is margin
/// left, and back where there is none.
template <class Margin>
std::optional<double> move_to_zero(const Margin& margin, double range) {
    double from = 0, left = margin(0.0);
    const bool onwards = left >= 0;
    for (int i = 1; i <= steps; ++i) {
        const double to = (onwards ? range : -range) * i / steps;
        const double then = margin(to);
        if (std::isnan(then)) return std::nullopt;
        if ((then < 0) == onwards) {
            const numerics::Bracket bracket = onwards ? numerics::Bracket{from, to, left, then}
                                                      : numerics::Bracket{to, from, then, left};
            return numerics::find_root(margin, bracket, {tolerance * range, 0, 60}).x;
        }
        from = to;
        left = then;
    }
    return std::nullopt;
}

/// The first part that the crank drives at a ratio, and that ratio.
struct Drive {
    std::string id;
    double* ratio = nullptr;
};

Drive find_drive(Vehicle& vehicle) {
    Drive found;
    for (auto& entry : vehicle.charge_path) {
        std::visit(
            [&](auto& part) {
                if constexpr (requires { part.drive_ratio = 1.0; })
                    if (found.ratio == nullptr) found = {entry.id, &part.drive_ratio};
            },
            entry.part.value);
    }
    return found;
}

void add_boost(Vehicle vehicle, const vehicle::OperatingCondition& condition, Margins& found) {
    const Drive drive = find_drive(vehicle);
    if (drive.ratio == nullptr) return;
    found.blower = drive.id;
    const double stated = *drive.ratio;
    const auto driven = [&](double growth) -> const Vehicle& {
        *drive.ratio = stated * std::exp(growth);
        return vehicle;
    };
    const auto left =
        move_to_zero([&](double growth) { return margin_at(driven(growth), condition); }, fastest);
    if (!left) return;
    const auto pressure = [&](double growth) {
        PointSolver solver(driven(growth));
        solver.at(condition);
        return solver.balance().manifold().pressure;
    };
    found.boost = pressure(*left) - pressure(0);
    found.drive_ratio = stated * std::exp(*left);
}

}  // namespace

Margins margins(const Vehicle& vehicle, const FullThrottlePoint& full_throttle) {
    const vehicle::OperatingCondition& condition = full_throttle.point.condition;
    const double retard = full_throttle.point.spark.retard;
    const Vehicle held = with_spark(vehicle, retard, retard);
    Margins found;
    add_boost(held, condition, found);
    found.charge_temperature = move_to_zero(
        [&](double hotter) {
            return margin_at(held, condition, {1, hotter});
        },
        hottest);
    found.spark = move_to_zero(
        [&](double advance) {
            return margin_at(with_spark(vehicle, retard - advance, retard), condition);
        },
        earliest);
    return found;
}

}  // namespace windwall::solve
