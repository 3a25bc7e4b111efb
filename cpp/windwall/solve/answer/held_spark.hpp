#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

namespace windwall::solve {

/// The vehicle with its spark held at a retard in rad, whatever knocks, and the mixture that went
/// with one.
vehicle::Vehicle with_spark(vehicle::Vehicle vehicle, double retard, double mixture_of);

/// Octane numbers to spare at a condition; NaN without an answer.
double margin_at(const vehicle::Vehicle& vehicle, const vehicle::OperatingCondition& condition,
                 const vehicle::WhatIf& what_if = {});

}  // namespace windwall::solve
