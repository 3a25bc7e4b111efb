#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string>

namespace windwall::solve {

/// A limit that is not passed yet, and how much faster it would be: bounds and value are in the SI
/// unit of the result that is limited.
struct LimitAhead {
    static constexpr std::string_view description =
        "A limit that would be passed by going faster, and how much faster. SI.";
    std::string address;
    std::optional<double> max;
    std::optional<double> min;
    std::string why;
    double value{};  // at the equilibrium
    double share{};  // of the speed there, further
    double speed{};  // m/s further

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
