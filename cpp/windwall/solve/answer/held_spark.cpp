#include "windwall/solve/answer/held_spark.hpp"

#include <limits>

namespace windwall::solve {

using vehicle::Vehicle;

Vehicle with_spark(Vehicle vehicle, double retard, double mixture_of) {
    std::visit(
        [&](auto& engine) {
            engine.lambda -= engine.spark.enrichment(mixture_of, engine.lambda);
            engine.spark.policy = engine::SparkPolicy::as_given;
            engine.spark.stated_retard = retard;
            engine.spark.table = {};
        },
        vehicle.engine.value);
    return vehicle;
}

double margin_at(const Vehicle& vehicle, const vehicle::OperatingCondition& condition,
                 const vehicle::WhatIf& what_if) {
    PointSolver solver(vehicle, what_if);
    const Point point = solver.at(condition);
    const bool answered = point.outcome.answered();
    return answered ? point.spark.margin : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace windwall::solve
