#include "windwall/solve/full_throttle/tractive_effort_curve.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::solve {
namespace {

constexpr std::size_t samples_of_a_rise = 24;
constexpr std::size_t samples_of_a_shift = 16;
constexpr std::size_t rougher_by = 2;
constexpr double kink_width = 1e-6;  // of a stretch
constexpr double rough_kink_width = 1e-3;
constexpr int kink_halvings = 60;

/// Where between two samples the tyres begin to hold the thrust, or cease to: the thrust has a kink
/// there.
CurvePoint kink(const FullLoadCurve& engine, const VehicleSolver& solver, std::size_t gear,
                CurvePoint before, CurvePoint behind, Sampling sampling) {
    const double width = sampling == Sampling::rough ? rough_kink_width : kink_width;
    for (int i = 0; i < kink_halvings && behind.along - before.along > width; ++i) {
        const CurvePoint middle = read(engine, solver, gear, 0.5 * (before.along + behind.along));
        (middle.grips == before.grips ? before : behind) = middle;
    }
    before.kink = true;
    return before;
}

/// Where the slip rises faster than the wheels turn the road does not get faster.
void add(const CurvePoint& sample, std::vector<CurvePoint>& samples) {
    if (sample.road_speed > samples.back().road_speed) samples.push_back(sample);
}

std::vector<CurvePoint> sampled(const FullLoadCurve& engine, const VehicleSolver& solver,
                                std::size_t gear, Sampling sampling) {
    const GearRange& gear_range = solver.gear_range(gear);
    std::vector<CurvePoint> samples;
    samples.reserve(gear_range.segments() * samples_of_a_rise + 2);
    samples.push_back(read(engine, solver, gear, 0));
    for (std::size_t segment = 0; segment < gear_range.segments(); ++segment) {
        const std::size_t steps =
            (gear_range.shifts(segment) ? samples_of_a_shift : samples_of_a_rise) /
            (sampling == Sampling::rough ? rougher_by : 1);
        for (std::size_t i = 1; i <= steps; ++i) {
            const double part = static_cast<double>(i) / static_cast<double>(steps);
            const CurvePoint next = read(engine, solver, gear, static_cast<double>(segment) + part);
            const CurvePoint last = samples.back();
            if (next.grips != last.grips)
                add(kink(engine, solver, gear, last, next, sampling), samples);
            add(next, samples);
        }
        samples.back().kink = true;
    }
    if (samples.size() == 1) {  // no range: it launches at its limit
        samples.push_back(samples.front());
        samples.back().road_speed *= 1 + 1e-9;
    }
    return samples;
}

std::vector<numerics::Table> thrust_over_speed(const std::vector<CurvePoint>& samples) {
    std::vector<numerics::Table> tables;
    std::vector<double> speeds, thrusts;
    for (auto* const column : {&speeds, &thrusts})
        column->reserve(samples.size());
    for (const CurvePoint& sample : samples) {
        speeds.push_back(sample.road_speed);
        thrusts.push_back(sample.thrust);
        if (speeds.size() < 2 || !(sample.kink || &sample == &samples.back())) continue;
        tables.emplace_back(std::move(speeds), std::move(thrusts),
                            numerics::Interpolation::monotone);
        speeds = {sample.road_speed};
        thrusts = {sample.thrust};
    }
    return tables;
}

/// Where a shift takes the crank along, what it adds falls as the gearing rises.
std::optional<numerics::Table> mass_over_speed(const VehicleSolver& solver, std::size_t gear,
                                               std::size_t segment,
                                               const std::vector<CurvePoint>& samples) {
    const double from = static_cast<double>(segment);
    const double share = solver.gear_range(gear).crank_share(from + 0.5);
    if (share == 0 || share == 1) return std::nullopt;
    std::vector<double> speeds, masses;
    for (const CurvePoint& sample : samples) {
        if (sample.along < from || sample.along > from + 1) continue;
        // Of both segments that meet in a whole number, this one.
        const double inside = std::clamp(sample.along, from, from + 1 - 1e-9);
        speeds.push_back(sample.road_speed);
        masses.push_back(solver.accelerated_mass_at(gear, inside));
    }
    if (speeds.size() < 2) return std::nullopt;
    return numerics::Table(speeds, masses, numerics::Interpolation::monotone);
}

}  // namespace

CurvePoint read(const FullLoadCurve& engine, const VehicleSolver& solver, std::size_t gear,
                double along) noexcept {
    const DrivelineState driveline_state = solver.gear_range(gear).at(along);
    const double assumed = solver.road_speed(driveline_state);
    const TractiveState tractive = solver.tractive_state(
        driveline_state, engine.torque(driveline_state.engine_speed, assumed), assumed);
    return {along,           tractive.road_speed,
            tractive.thrust, tractive.thrust - solver.load(tractive.road_speed).total(),
            tractive.grips,  false};
}

TractiveEffortCurve::TractiveEffortCurve(const FullLoadCurve& engine, const VehicleSolver& solver,
                                         std::size_t gear, Sampling sampling)
    : gear_(gear),
      samples_(sampled(engine, solver, gear, sampling)),
      thrust_(thrust_over_speed(samples_)) {
    const GearRange& gear_range = solver.gear_range(gear);
    highest_position_ = gear_range.at(gear_range.end()).gear_state.position;
    masses_[0] = solver.launched_mass(gear);
    ends_[0] = low_speed();
    for (std::size_t segment = 0; segment < gear_range.segments(); ++segment, ++pieces_) {
        masses_[pieces_] = solver.accelerated_mass(gear, segment);
        varying_masses_[pieces_] = mass_over_speed(solver, gear, segment, samples_);
        ends_[pieces_] = read(engine, solver, gear, static_cast<double>(segment) + 1).road_speed;
    }
}

void TractiveEffortCurve::pass_through(const FullThrottlePoint& full_throttle) noexcept {
    const double factor = full_throttle.thrust / thrust(full_throttle.road_speed);
    scale_ *= factor;
    for (CurvePoint& sample : samples_) {
        sample.excess_force += (factor - 1) * sample.thrust;
        sample.thrust *= factor;
    }
}

double TractiveEffortCurve::thrust(double road_speed) const noexcept {
    std::size_t i = 0;
    while (i + 1 < thrust_.size() && road_speed >= thrust_[i].high())
        ++i;
    return scale_ * thrust_[i].at(road_speed).value;  // below the lowest sample the value there
}

double TractiveEffortCurve::along(double road_speed) const noexcept {
    std::size_t i = 0;
    while (i + 2 < samples_.size() && road_speed >= samples_[i + 1].road_speed)
        ++i;
    const CurvePoint &below = samples_[i], &above = samples_[i + 1];
    const double share = (road_speed - below.road_speed) / (above.road_speed - below.road_speed);
    return std::lerp(below.along, above.along, std::clamp(share, 0.0, 1.0));
}

std::size_t TractiveEffortCurve::piece(double road_speed) const noexcept {
    std::size_t piece = 0;
    while (piece + 1 < pieces_ && road_speed >= ends_[piece])
        ++piece;
    return piece;
}

double TractiveEffortCurve::end_of_piece(std::size_t piece) const noexcept {
    return piece + 1 < pieces_ ? ends_[piece] : std::numeric_limits<double>::infinity();
}

double TractiveEffortCurve::accelerated_mass(double road_speed) const noexcept {
    const std::size_t at = piece(road_speed);
    return varying_masses_[at] ? varying_masses_[at]->at(road_speed).value : masses_[at];
}

std::vector<TractiveEffortCurve> tractive_effort_curves(const FullLoadCurve& engine,
                                                        const VehicleSolver& solver,
                                                        Sampling sampling) {
    std::vector<TractiveEffortCurve> curves;
    curves.reserve(solver.gears());
    for (std::size_t gear = 0; gear < solver.gears(); ++gear)
        curves.emplace_back(engine, solver, gear, sampling);
    return curves;
}

}  // namespace windwall::solve
