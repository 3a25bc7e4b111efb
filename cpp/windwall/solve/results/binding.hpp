#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <optional>
#include <span>

namespace windwall::solve {

/// What may bind at the equilibrium.
enum class Binding { drag, rev_limit, grip, knock, torque_step, no_answer, standstill };

/// Where the belt of a variator stands.
struct BeltPosition {
    static constexpr std::string_view description = "Where the belt of a variator stands.";
    double ratio{};
    bool highest = false;  // gearing: it shifts no further up
    bool lowest = false;

    static std::span<const fields::Row> rows();
};

/// What would bind next, and how far away it is.
struct NextBinding {
    static constexpr std::string_view description = "What would bind next, and how far away it is.";
    Binding binding{};  // drag, rev_limit or grip
    double share{};     // of the speed or thrust there is; of drag: what of the thrust it takes
    std::optional<double> speed;  // further to the rev limit

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve

template <>
struct windwall::fields::Names<windwall::solve::Binding> {
    static constexpr std::array<std::string_view, 7> names{
        "drag", "rev_limit", "grip", "knock", "torque_step", "no_answer", "standstill"};
};
