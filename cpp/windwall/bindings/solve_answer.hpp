#pragma once
#include "windwall/solve/answer/answer.hpp"

#include <pybind11/pybind11.h>

namespace windwall::bindings {

/// Answers as plain Python objects: dicts, lists, texts and SI numbers, so that they pickle, and
/// None for what has no answer.
pybind11::dict plain(const solve::SpeedAnswer& answer);
pybind11::dict plain(const solve::PointAnswer& answer);
pybind11::dict plain(const solve::LimitViolation& passed);

}  // namespace windwall::bindings
