#pragma once
#include "windwall/solve/drive/drive.hpp"

namespace windwall::solve {

/// J: what is left of the crank's work when all that took it is taken off.
inline double energy_left(const DriveResult& drive) {
    double left = drive.energy[static_cast<std::size_t>(Energy::crank)] - drive.changed;
    for (std::size_t i = static_cast<std::size_t>(Energy::driveline); i < energies; ++i)
        left -= drive.energy[i];
    return left - (drive.kinetic_after - drive.kinetic_before);
}

}  // namespace windwall::solve
