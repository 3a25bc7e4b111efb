#pragma once
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/study/ranking.hpp"

#include <array>
#include <optional>

namespace windwall::study {

/// Moves the knock anchor of a vehicle by so many octane numbers; it is known as well as before.
vehicle::Vehicle at_anchor(vehicle::Vehicle vehicle, double octane_shift);

/// One engine as fitted, at the three anchors; each is solved once it is asked for.
class FittedEngine {
public:
    FittedEngine(const vehicle::Vehicle& vehicle, const scenario::Scenario& scenario,
                 double anchor_spread);

    /// Of a vehicle with this engine in it; the anchor is by number, whatever the vehicle states.
    solve::TopSpeed top_speed(vehicle::Vehicle fitted, std::size_t anchor);
    /// The same without the points on the way.
    solve::TopSpeed brief_top_speed(vehicle::Vehicle fitted, std::size_t anchor);
    /// See solve::SharedEngine; infinite where that tells nothing.
    double rough_speed(const vehicle::Vehicle& fitted, std::size_t anchor, double least);
    const solve::LimitWatch& limits() const { return limits_; }

private:
    solve::LimitWatch* watch(std::size_t anchor) { return anchor == middle ? &limits_ : nullptr; }
    using Question = solve::TopSpeed (solve::SharedEngine::*)(const vehicle::Vehicle&);
    solve::TopSpeed ask(Question question, vehicle::Vehicle fitted, std::size_t anchor);
    solve::SharedEngine& shared(std::size_t anchor);

    solve::LimitWatch limits_;
    std::array<vehicle::Vehicle, anchors> vehicles_;
    std::array<std::optional<solve::SharedEngine>, anchors> shared_;
};

}  // namespace windwall::study
