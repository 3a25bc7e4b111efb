#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string>

namespace windwall::solve {

/// A limit that is passed on the way up: bounds and values are in the SI unit of the result that
/// is limited.
struct LimitViolation {
    static constexpr std::string_view description =
        "A limit that is passed on the way up: where first, and by how much at worst. SI.";
    std::string address;
    std::optional<double> max;
    std::optional<double> min;
    std::string why;
    double first{};  // the value where it is first passed
    double worst{};
    double road_speed{};
    double engine_speed{};
    long gear{};  // from 1

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
