#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::driveline {

/// How far a sheave has moved, m, of how far it moves at all.
struct Travel {
    double now{};
    double full{};
};

/// What closes the driving sheave: weights that its speed drives outwards over a ramp, less a
/// spring that holds it open. Arms on a cam and rollers between plates alike are told by how far a
/// weight goes out for each millimetre that the sheave closes.
struct Flyweights {
    static constexpr std::string_view description =
        "Weights, ramp and spring that close the driving sheave of a belt drive.";
    double weights = 3;
    double weight_mass{};               // kg each
    double weight_radius{};             // m, of its centre of mass, with the sheave open
    double ramp{};                      // outwards over closing, with the sheave open
    std::optional<double> ramp_closed;  // and closed; as when open where it is not stated
    double spring_preload{};            // N
    double spring_rate{};               // N/m

    /// Closing force of the weights for each (rad/s)2, N s2: n m R dR/dx.
    double centrifugal(Travel closed) const noexcept;
    /// What the spring takes of it, N.
    double spring(Travel closed) const noexcept;
    /// N at a speed in rad/s, negative where the spring wins.
    double closing_force(double speed, Travel closed) const noexcept;
    /// The speed, rad/s, at which the sheave closes with a force, N.
    double speed_for(double force, Travel closed) const noexcept;

    static std::span<const fields::Row> rows();

private:
    double slope(Travel closed) const noexcept;
    double radius(Travel closed) const noexcept;  // m
};

}  // namespace windwall::driveline
