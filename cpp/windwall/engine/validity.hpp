#pragma once

namespace windwall::engine {

/// Whether one operating point lies where the rules it leans on are supported.
struct Validity {
    bool compression_ratio = true;  // fuel-air table, 6 to 12
    bool mixture = true;            // fuel-air table, equivalence ratio 0.6 to 1.4
    bool mach_index = true;         // filling table, at most 1.2
    bool pressure_ratio = true;     // ideal filling, exhaust over intake pressure 0.3 to 3
    bool retard = true;             // spark penalty, 30 degrees
    bool knock_pressure = true;     // octane rule, half to twice the anchor's
    bool measured_speed = true;     // inside a measured table
    bool water = true;              // knock under water, 0.6 kg per kg of fuel
    bool dry_plug = true;           // 0.06 kg of drops per kg of air in the cylinder

    bool all() const noexcept {
        return compression_ratio && mixture && mach_index && pressure_ratio && retard &&
               knock_pressure && measured_speed && water && dry_plug;
    }
};

}  // namespace windwall::engine
