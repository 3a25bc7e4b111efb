#pragma once

namespace windwall::road {

/// A retarding force that is part constant and part quadratic in speed, F = a + c v^2: the road
/// load in still air, for which runs have closed forms.
struct Resistance {
    double constant{};  // a, N; negative when the slope pulls more than the tyres hold
    double square{};    // c, N s2/m2, not negative

    /// N, at a forward speed in m/s
    double force(double speed) const noexcept { return constant + square * speed * speed; }
};

}  // namespace windwall::road
