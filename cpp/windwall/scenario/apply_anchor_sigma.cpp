#include "windwall/scenario/apply_anchor_sigma.hpp"

namespace windwall::scenario {

void apply_anchor_sigma(vehicle::Vehicle& vehicle, const fields::Provenance& notes) {
    auto* engine = vehicle.engine.as<engine::Cylinder>();
    if (engine == nullptr) return;
    const auto* note = notes.find(knock_anchor);
    engine->knock_anchor.known_to.reset();
    if (note && note->sigma && *note->sigma > 0) engine->knock_anchor.known_to = *note->sigma;
}

double anchor_spread(const vehicle::Vehicle& vehicle) {
    return vehicle.engine.visit([]<class Engine>(const Engine& engine) {
        if constexpr (engine::Anchored<Engine>) return engine.knock_anchor.spread();
        return 0.0;
    });
}

}  // namespace windwall::scenario
