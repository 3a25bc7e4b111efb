#pragma once
#include "windwall/engine/intake.hpp"
#include "windwall/engine/mixture.hpp"
#include "windwall/media/fuel.hpp"

namespace windwall::engine {

/// What burns: a carburetted charge as it comes; else the engine's own fuel for a lambda `target`,
/// less what a pump cuts off it, or where none does and it `trims`, less what the fuel in the
/// charge does in its place.
Mixture mix_at(const Intake& intake, const media::Fuel& fuel, double target, bool trims) noexcept;

/// kg of air per kg of dry air and second, by which what the own fuel has been trimmed for nears
/// what the fuel in the charge needs: a lag of first order, s.
double trim_rate(double trim, double needed, double trim_time) noexcept;

}  // namespace windwall::engine
