#pragma once

namespace windwall::engine {

/// What one operating point does at the crank, before the blower takes its share. SI units.
struct Work {
    // Powers in W.
    double indicated{};
    double rubbing{};
    double pumping{};  // negative where the charge drives the pistons
    double accessories{};
    double fuel_power{};    // lower heating value of all fuel burnt, injected fuel included
    double released{};      // of that, what burns
    double chamber_heat{};  // of that, to head and barrel inside the cylinder

    double engine_speed{};        // rad/s, as used in torque()
    double fuel_flow{};           // kg/s through the engine's own fuel system
    double injected_fuel_flow{};  // kg/s that came with the charge
    double lambda{};
    double burnt = 1;  // share of what could burn that does
    double indicated_efficiency{};

    // Mean effective pressures in Pa.
    double indicated_mean_pressure{};
    double rubbing_mean_pressure{};
    double pumping_mean_pressure{};
    double brake_mean_pressure{};

    double power() const noexcept { return indicated - rubbing - pumping - accessories; }
    /// N m at the crank.
    double torque() const noexcept { return power() / engine_speed; }
};

}  // namespace windwall::engine
