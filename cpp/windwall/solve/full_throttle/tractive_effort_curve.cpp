#include "windwall/solve/gear_curve.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr std::size_t samples_of_a_rise = 24;
constexpr std::size_t samples_of_a_shift = 16;
constexpr double kink_width = 1e-6;  // of a stretch

/// Where between two samples the tyres begin to hold the thrust, or cease to: the thrust has a kink
/// there.
Sample kink(const EngineCurve& engine, const Puller& puller, std::size_t gear, Sample before,
            Sample behind) {
    while (behind.along - before.along > kink_width) {
        const Sample middle = read(engine, puller, gear, 0.5 * (before.along + behind.along));
        (middle.grips == before.grips ? before : behind) = middle;
    }
    before.kink = true;
    return before;
}

/// Where the slip rises faster than the wheels turn the road does not get faster.
void add(const Sample& sample, std::vector<Sample>& samples) {
    if (sample.road_speed > samples.back().road_speed) samples.push_back(sample);
}

std::vector<Sample> sampled(const EngineCurve& engine, const Puller& puller, std::size_t gear) {
    const Sweep& sweep = puller.sweep(gear);
    std::vector<Sample> samples{read(engine, puller, gear, 0)};
    for (std::size_t stretch = 0; stretch < sweep.stretches(); ++stretch) {
        const std::size_t steps = sweep.shifts(stretch) ? samples_of_a_shift : samples_of_a_rise;
        for (std::size_t i = 1; i <= steps; ++i) {
            const double part = static_cast<double>(i) / static_cast<double>(steps);
            const Sample next = read(engine, puller, gear, static_cast<double>(stretch) + part);
            const Sample last = samples.back();
            if (next.grips != last.grips) add(kink(engine, puller, gear, last, next), samples);
            add(next, samples);
        }
        samples.back().kink = true;
    }
    if (samples.size() == 1) {  // nothing to sweep: it launches at its limit
        samples.push_back(samples.front());
        samples.back().road_speed *= 1 + 1e-9;
    }
    return samples;
}

std::vector<numerics::Table> thrust_over_speed(const std::vector<Sample>& samples) {
    std::vector<numerics::Table> tables;
    std::vector<double> speeds, thrusts;
    for (const Sample& sample : samples) {
        speeds.push_back(sample.road_speed);
        thrusts.push_back(sample.thrust);
        if (speeds.size() < 2 || !(sample.kink || &sample == &samples.back())) continue;
        tables.emplace_back(speeds, thrusts, numerics::Interpolation::monotone);
        speeds = {sample.road_speed};
        thrusts = {sample.thrust};
    }
    return tables;
}

}  // namespace

Sample read(const EngineCurve& engine, const Puller& puller, std::size_t gear,
            double along) noexcept {
    const Setting setting = puller.sweep(gear).at(along);
    const double assumed = puller.road_speed(setting);
    const Reach reach =
        puller.reach(setting, engine.torque(setting.engine_speed, assumed), assumed);
    return {along,        reach.road_speed,
            reach.thrust, reach.thrust - puller.load(reach.road_speed).total(),
            reach.grips,  false};
}

GearCurve::GearCurve(const EngineCurve& engine, const Puller& puller, std::size_t gear)
    : gear_(gear), samples_(sampled(engine, puller, gear)), thrust_(thrust_over_speed(samples_)) {
    const Sweep& sweep = puller.sweep(gear);
    masses_[0] = puller.launched_mass(gear);
    ends_[0] = low_speed();
    for (std::size_t stretch = 0; stretch < sweep.stretches(); ++stretch, ++pieces_) {
        masses_[pieces_] = puller.accelerated_mass(gear, stretch);
        ends_[pieces_] = read(engine, puller, gear, static_cast<double>(stretch) + 1).road_speed;
    }
}

void GearCurve::pass_through(const Pull& pull) noexcept {
    const double factor = pull.thrust / thrust(pull.road_speed);
    scale_ *= factor;
    for (Sample& sample : samples_) {
        sample.surplus += (factor - 1) * sample.thrust;
        sample.thrust *= factor;
    }
}

double GearCurve::thrust(double road_speed) const noexcept {
    std::size_t i = 0;
    while (i + 1 < thrust_.size() && road_speed >= thrust_[i].high())
        ++i;
    return scale_ * thrust_[i].at(road_speed).value;  // below the lowest sample the value there
}

std::size_t GearCurve::piece(double road_speed) const noexcept {
    std::size_t piece = 0;
    while (piece + 1 < pieces_ && road_speed >= ends_[piece])
        ++piece;
    return piece;
}

std::vector<GearCurve> gear_curves(const EngineCurve& engine, const Puller& puller) {
    std::vector<GearCurve> curves;
    for (std::size_t gear = 0; gear < puller.gears(); ++gear)
        curves.emplace_back(engine, puller, gear);
    return curves;
}

}  // namespace windwall::solve
