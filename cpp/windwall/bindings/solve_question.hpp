#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/vehicle/operating_condition.hpp"

#include <optional>
#include <span>

namespace windwall::bindings {

/// What may be asked of an operating point, by rows like everything else.
struct Question {
    static constexpr std::string_view description = "Where the engine is held.";
    double engine_speed{};
    double opening = 1;
    double road_speed = 0;

    vehicle::OperatingCondition condition() const noexcept {
        return {engine_speed, road_speed, opening};
    }
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::bindings
