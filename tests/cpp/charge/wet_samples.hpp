#pragma once
#include "windwall/charge/evaporative_injection.hpp"
#include "windwall/charge/surroundings.hpp"
#include "windwall/media/humid_air.hpp"

/// The day and the charge that liquid is put into.
namespace windwall::charge {

inline Surroundings day() {
    Surroundings surroundings;
    surroundings.ambient_pressure = 100e3;
    surroundings.ambient_temperature = 298.15;
    surroundings.under_hood_temperature = 298.15;
    return surroundings;
}

inline media::Stream humid(double pressure, double temperature, double dry_air) {
    return media::ambient_stream(pressure, temperature, 0.00988, dry_air);
}

/// Half methanol, half water.
inline EvaporativeInjection blend_nozzle() {
    EvaporativeInjection made;
    made.methanol = 0.5;
    made.rated_flow = 300e-6 / 60;
    made.pump_pressure = 7e5;
    return made;
}

}  // namespace windwall::charge
