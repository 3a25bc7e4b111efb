#pragma once
#include "windwall/solve/results/flyweight_fit.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <optional>

namespace windwall::solve {

/// Engine speeds, rad/s, that a belt drive is to hold at full throttle.
struct WantedSpeeds {
    double begin{};             // where it begins to shift
    std::optional<double> end;  // where it has shifted
    std::optional<double> engagement;
};

/// Whether the vehicle has a belt drive of variable ratio that states its weights.
bool has_flyweights(const vehicle::Vehicle& vehicle) noexcept;

/// The balance of forces turned round, at the torque that the engine has at these speeds; for a
/// vehicle that has weights, and speeds that rise from engagement on.
FlyweightFit answer_flyweights(const vehicle::Vehicle& vehicle, const WantedSpeeds& wanted);

}  // namespace windwall::solve
