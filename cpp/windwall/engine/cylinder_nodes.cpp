// Head, oil and block as lumps that take time to warm up.
#include "windwall/engine/cylinder.hpp"
#include "windwall/media/constants.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

/// Of the resistance between the oil and what cools it, the share between oil and block; estimate.
constexpr double oil_film_share = 0.3;
/// Of the heat that the flows alone give the head, where hardly anything burns.
constexpr double least_heat_share = 0.05;
constexpr double near_rest = 1, off_rest = 50;  // K

/// The metal that the oil is cooled through; while nothing turns it has the oil and the air around.
media::LumpedNode block_node(const media::LumpedNode& oil, double oil_temperature, double mass,
                             const media::Exchange& around) {
    const double film = oil.cold_conductance / oil_film_share;
    return {"block",
            mass * media::constants::aluminium_heat_capacity,
            0,
            film,
            oil_temperature,
            oil.cold_conductance / (1 - oil_film_share),
            oil.cold_temperature,
            std::nullopt,
            oil.only_cools,
            media::both({film, oil_temperature}, around)};
}

/// A head that comes to rest where its flows say, by the heat that it really gets: W `taken` with
/// the head at a temperature in K.
template <class Taken>
media::LumpedNode heated(media::LumpedNode node, double rest, double now, const Taken& taken) {
    const double by_flows = node.cold_conductance * (rest - node.cold_temperature);
    if (!(by_flows > 0)) return node;
    const double at_rest = taken(rest);
    const double off = std::abs(now - rest) > near_rest ? now : rest - off_rest;
    node.heat = std::max(at_rest, least_heat_share * by_flows);
    node.warm_conductance = std::max((taken(off) - at_rest) / (rest - off), 0.0);
    node.warm_temperature = rest;
    node.cold_conductance *= node.heat / by_flows;
    return node;
}

}  // namespace

/// What the exhaust's account leaves in the walls, less the oil's share of it.
media::LumpedNode Cylinder::head_node(const Intake& intake, const Mixture& burnt, const Work& work,
                                      const HeadState& known) const noexcept {
    const Cooling measured = measured_cooling();
    const HeadState here = head_state(intake, burnt);
    const double known_heat = known_head_heat(known);
    media::LumpedNode node = measured.head_node(here, known, known_heat);
    const double to_oil = oil.wall_share * walls.share * released(intake, burnt);
    const auto taken = [&](double temperature) {
        const ExhaustGas gas = exhaust_gas(intake, work, known, temperature);
        return engine::heat(work, gas).walls - to_oil;
    };
    if (work.fuel_power > 0)
        node =
            heated(node, measured.head_temperature(here, known), head(intake, burnt, known), taken);
    node.still = {measured.still_conductance(known_heat, measured.known_head_temperature),
                  intake.under_hood_temperature};
    return node;
}

media::LumpedNode Cylinder::oil_node(const Intake& intake, const Mixture& burnt,
                                     const HeadState& known) const noexcept {
    const HeadState here = head_state(intake, burnt);
    media::LumpedNode node = oil.node(
        heat_to_oil(piston_speed(here.engine_speed), released(intake, burnt), here.engine_speed),
        heat_to_oil(piston_speed(known.engine_speed), known_released(known), known.engine_speed),
        cooling.flow_share(here, known), cooling.sink_temperature(here.air_temperature),
        cooling.sink_temperature(known.air_temperature));
    node.only_cools = cooling.only_cools();
    return node;
}

std::array<media::LumpedNode, 3> Cylinder::thermal_nodes(const Intake& intake,
                                                         const media::Fuel& fuel,
                                                         const Work& work) const noexcept {
    const Mixture burnt = mixture(intake, fuel);
    const HeadState known = known_head_state();
    media::LumpedNode sump = oil_node(intake, burnt, known);
    const double known_heat =
        heat_to_oil(piston_speed(known.engine_speed), known_released(known), known.engine_speed);
    const double still =
        cooling.still_conductance(known_heat, oil.known_temperature) / (1 - oil_film_share);
    const media::LumpedNode block =
        block_node(sump, oil_temperature(intake, burnt), cooling.block_mass,
                   {still, intake.under_hood_temperature});
    if (intake.block_temperature) {
        sump.cold_conductance = block.warm_conductance;
        sump.cold_temperature = *intake.block_temperature;
        sump.only_cools = false;
    }
    return {head_node(intake, burnt, work, known), sump, block};
}

}  // namespace windwall::engine
