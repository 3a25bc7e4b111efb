#pragma once

/// Liquid that comes in pulses to an engine that breathes in gulps.
namespace windwall::charge {

/// Open share of a pulsed valve: duty less the dead time's share, within 0 and 1.
double valve_open_share(double duty, double period, double dead_time) noexcept;

/// How far what one intake stroke catches is from what the next does: one standard deviation over
/// the mean, of pulses of a period in s that are open for a share of it, at an engine speed in
/// rad/s. A stroke catches what flows for 240 of the 720 degrees of its cycle, at any phase to the
/// pulses as likely as at any other. On their way they are stirred in a vessel that the charge
/// needs `mixing_time` s to pass.
double cycle_spread(double period, double open_share, double engine_speed,
                    double mixing_time = 0) noexcept;

}  // namespace windwall::charge
