#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>

namespace windwall::solve {

/// The belt drive of variable ratio.
struct VariatorResult {
    static constexpr std::string_view description = "The belt drive of variable ratio.";
    double ratio{};
    double slip{};
    double efficiency{};
    std::optional<double> clamp_force;  // empty where nothing says what presses
    std::optional<double> capacity;     // empty where nothing says what it holds
    double temperature{};               // at rest

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
