#pragma once

namespace windwall::road {

/// The integral of dv / (a + b v + c v^2) from `low` to `high`, for a quadratic that is positive at
/// both ends and between; exact in the limits b = 0, c = 0 and a double root.
double over_quadratic(double a, double b, double c, double low, double high) noexcept;

}  // namespace windwall::road
