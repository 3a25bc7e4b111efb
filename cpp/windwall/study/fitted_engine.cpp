#include "windwall/study/fitted_engine.hpp"

#include "windwall/solve/point/guarded.hpp"

#include <limits>
#include <utility>

namespace windwall::study {
namespace {

using vehicle::Vehicle;

constexpr double infinity = std::numeric_limits<double>::infinity();

}  // namespace

Vehicle at_anchor(Vehicle vehicle, double octane_shift) {
    std::visit(
        [&]<class Engine>(Engine& engine) {
            if constexpr (engine::Anchored<Engine>) {
                engine.knock_anchor.known_to = engine.knock_anchor.spread();
                engine.knock_anchor.octane_number += octane_shift;
            }
        },
        vehicle.engine.value);
    return vehicle;
}

FittedEngine::FittedEngine(const Vehicle& vehicle, const scenario::Scenario& scenario,
                           double anchor_spread)
    : limits_(vehicle, scenario.limits),
      vehicles_{at_anchor(vehicle, -anchor_spread), vehicle, at_anchor(vehicle, anchor_spread)} {}

solve::TopSpeed FittedEngine::top_speed(Vehicle fitted, std::size_t anchor) {
    return ask(&solve::SharedEngine::top_speed, std::move(fitted), anchor);
}

solve::TopSpeed FittedEngine::brief_top_speed(Vehicle fitted, std::size_t anchor) {
    return ask(&solve::SharedEngine::brief_top_speed, std::move(fitted), anchor);
}

solve::TopSpeed FittedEngine::ask(Question question, Vehicle fitted, std::size_t anchor) {
    fitted.engine = vehicles_[anchor].engine;
    if (!solve::same_range(vehicles_[anchor], fitted))
        return solve::top_speed(fitted, {}, watch(anchor));
    return solve::guarded([&] { return (shared(anchor).*question)(fitted); },
                          [] { return solve::TopSpeed{.outcome = solve::broken_off}; });
}

double FittedEngine::rough_speed(const Vehicle& fitted, std::size_t anchor, double least) {
    if (!solve::same_range(vehicles_[anchor], fitted)) return infinity;
    return solve::guarded([&] { return shared(anchor).rough_speed(fitted, least); },
                          [] { return infinity; });
}

solve::SharedEngine& FittedEngine::shared(std::size_t anchor) {
    auto& engine = shared_[anchor];
    if (!engine) engine.emplace(vehicles_[anchor], vehicle::WhatIf{}, watch(anchor));
    return *engine;
}

}  // namespace windwall::study
