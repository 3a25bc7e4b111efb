// Head, oil and block as lumps that take time to warm up.
#include "windwall/engine/cylinder.hpp"
#include "windwall/media/constants.hpp"

namespace windwall::engine {
namespace {

/// Of the resistance between the oil and what cools it, the share between oil and block; estimate.
constexpr double oil_film_share = 0.3;

/// The metal that the oil is cooled through.
media::LumpedNode block_node(const media::LumpedNode& oil, double oil_temperature, double mass) {
    return {"block",
            mass * media::constants::aluminium_heat_capacity,
            0,
            oil.cold_conductance / oil_film_share,
            oil_temperature,
            oil.cold_conductance / (1 - oil_film_share),
            oil.cold_temperature};
}

}  // namespace

std::array<media::LumpedNode, 3> Cylinder::thermal_nodes(const Intake& intake,
                                                         const media::Fuel& fuel) const noexcept {
    const Mixture burnt = mixture(intake, fuel);
    const HeadState here = head_state(intake, burnt), known = known_head_state();
    const media::LumpedNode head =
        measured_cooling().head_node(here, known, known_head_heat(known));
    media::LumpedNode sump = oil.node(
        heat_to_oil(piston_speed(here.engine_speed), released(intake, burnt), here.engine_speed),
        heat_to_oil(piston_speed(known.engine_speed), known_released(known), known.engine_speed),
        cooling.flow_share(here, known), cooling.sink_temperature(here.air_temperature),
        cooling.sink_temperature(known.air_temperature));
    const media::LumpedNode block =
        block_node(sump, oil_temperature(intake, burnt), cooling.block_mass);
    if (intake.block_temperature) {
        sump.cold_conductance = block.warm_conductance;
        sump.cold_temperature = *intake.block_temperature;
    }
    return {head, sump, block};
}

}  // namespace windwall::engine
