#pragma once

namespace windwall::charge {

/// The first seconds of a spray behind a switch that closes at 0, in closed form, with all else as
/// it is: what an integration over time has to give there, and where a stumble comes from. Times in
/// s.
struct SprayStart {
    double delay{};       // from the switch to the pump
    double rise_time{};   // of the pump, first order
    double fill_time{};   // of the line by the whole flow; 0 where it is full
    double film_share{};  // of what leaves the nozzle, that goes along walls
    double film_time{};   // that it stays there

    /// When the first liquid leaves the nozzle.
    double first_liquid() const noexcept;
    /// Share of its pump that runs at a time.
    double running(double time) const noexcept;
    /// Of the flow in the end, what leaves the nozzle at a time, and what reaches the valves.
    double sprayed(double time) const noexcept;
    double arrived(double time) const noexcept;
};

}  // namespace windwall::charge
