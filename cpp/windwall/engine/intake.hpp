#pragma once
#include "windwall/media/stream.hpp"

namespace windwall::engine {

/// What the engine sees at one operating point. SI units.
struct Intake {
    double engine_speed{};            // rad/s
    media::Stream charge;             // at the manifold
    double ambient_pressure{};        // Pa absolute
    double ambient_temperature{};     // K
    double road_speed{};              // m/s, of the air over the vehicle: it cools the head
    double under_hood_temperature{};  // K
    bool carburetted{};               // the fuel is in the charge; the engine adds none of its own
};

}  // namespace windwall::engine
