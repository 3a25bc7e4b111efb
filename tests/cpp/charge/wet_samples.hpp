#pragma once
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

}  // namespace windwall::charge
