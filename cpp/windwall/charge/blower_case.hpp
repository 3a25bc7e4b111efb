#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/media/stream.hpp"
#include "windwall/media/thermal_node.hpp"

#include <optional>

namespace windwall::charge {

struct PositiveBlower;

/// What the case of a blower takes from the charge, and where it stands. It has no heat of its own:
/// it is as warm as it must be to give off what it takes from charge and bearings, to the air
/// around it and to what it is bolted to.
class BlowerCase {
public:
    /// For a charge that enters like `in`, with a bearing loss in W.
    BlowerCase(const PositiveBlower& blower, const media::Stream& in, double rotor_speed,
               double bearing_loss, const Surroundings& surroundings) noexcept;

    /// W/K from the charge, at the mean of its two temperatures, to what is behind the case.
    double conductance() const noexcept { return conductance_; }
    /// W from a charge of a mean temperature in K.
    double taken(double mean) const noexcept { return conductance_ * (mean - behind_); }
    /// K, with a charge of a mean temperature in K.
    double temperature(double mean) const noexcept;
    /// The case as a lump of a heat capacity in J/K.
    media::LumpedNode node(double mean, double heat_capacity) const noexcept;

private:
    double from_charge_{}, outward_{};  // W/K
    double outside_{};                  // K, what it gives its heat to, by conductance
    double bearing_loss_{};             // W
    double conductance_{}, behind_{};
    std::optional<double> stated_;  // K
};

/// Outer surface, m2, of the case of a blower that moves a volume in m3 a revolution.
double case_surface(double displacement) noexcept;

/// Film of the charge on the inside of such a case, W/(m2 K), at a rotor speed in rad/s: it goes
/// round in the pockets as in a pipe of half the blower's size, with the tips of the rotors.
double case_film(double displacement, double rotor_speed, const media::Stream& in) noexcept;

}  // namespace windwall::charge
