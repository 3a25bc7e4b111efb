#pragma once
#include "windwall/solve/results/ending.hpp"

#include <optional>
#include <span>
#include <string>

namespace windwall::solve {

/// Weights and spring of a belt drive that hold the engine where it is wanted.
struct FlyweightFit {
    static constexpr std::string_view description =
        "Weights and spring of a belt drive that hold the engine where it is wanted.";
    Ending ending{};
    std::string address{};  // of the weights there are
    double torque{};
    std::optional<double> end_torque{};  // empty where no end is wanted
    double weight_mass{};
    double spring_preload{};
    std::optional<double> spring_rate{};  // empty where no end is wanted, or no spring does it
    std::optional<double> ramp_closed{};  // empty where no end is wanted
    double engagement_speed{};

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
