#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/solve/point/point.hpp"

#include <span>
#include <string>

namespace windwall::solve {

/// How a question ended.
struct Ending {
    static constexpr std::string_view description = "How a question ended.";
    Status status = Status::not_converged;
    bool answered = false;
    std::string part;  // whose balance is furthest off; may be empty
    double residual{};
    long evaluations{};

    static std::span<const fields::Row> rows();
};

Ending ending(const Outcome& outcome);

/// A condition and how it ended there: where there is no answer, what a reader is told of it.
struct Tried {
    static constexpr std::string_view description = "A condition, and how the solve ended there.";
    Ending ending;
    double engine_speed{};
    double road_speed{};
    double opening{};

    static std::span<const fields::Row> rows();
};

Tried tried(const Point& point);

}  // namespace windwall::solve

template <>
struct windwall::fields::Names<windwall::solve::Status> {
    static constexpr const auto& names = windwall::solve::status_names;
};
