#include "windwall/engine/stock.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace windwall::engine {
namespace {

constexpr double open_pipe = 2e3;  // Pa, of a gross rating; as the prior of an open exhaust
constexpr int rounds = 40;         // of the flow, which moves the exhaust and the head
constexpr double settled = 1e-14;  // of the flow
// By how much what a flow draws, less that flow, changes with it: what it draws depends on it a
// little, by the pressure behind the valves and the heat of the head.
constexpr double steepest = -2, flattest = -0.5;

/// Where the drop of the intake is stated: full power, else the rev limit.
double drop_speed(const Cylinder& stock) {
    return stock.rated->power_speed.value_or(stock.rev_limit);
}

/// By secants, to the flow that draws itself.
void settle_flow(const Cylinder& stock, const media::Fuel& fuel, Intake& intake) {
    double& flow = intake.charge.dry_air;
    double slope = -1, last = 0, last_off = 0;
    for (int round = 0; round < rounds; ++round) {
        const double off = stock.gas_demand(intake, fuel) - flow;
        if (std::abs(off) <= settled * flow) break;
        if (round > 0) slope = std::clamp((off - last_off) / (flow - last), steepest, flattest);
        last = std::exchange(flow, flow - off / slope);
        last_off = off;
    }
}

}  // namespace

Cylinder stock_of(const Cylinder& engine) {
    Cylinder stock = engine;
    stock.compression_ratio = engine.rated->compression_ratio;
    if (engine.rated->as == RatedAs::net) return stock;
    stock.exhaust = {};
    stock.exhaust.back_pressure = open_pipe;
    stock.accessories = {};
    stock.rated->intake_drop /= 2;
    return stock;
}

Intake full_throttle(const Cylinder& stock, const media::Fuel& fuel, double engine_speed,
                     double temperature) {
    const double share = engine_speed / drop_speed(stock);
    const double ambient = stock.rated->pressure;
    const double manifold =
        std::max(0.7 * ambient, ambient - stock.rated->intake_drop * share * share);
    Intake intake;
    intake.engine_speed = engine_speed;
    intake.charge = media::ambient_stream(manifold, temperature, 0, 1e-3);
    intake.ambient_pressure = ambient;
    intake.ambient_temperature = temperature;
    intake.under_hood_temperature = temperature;  // nothing covers an engine on its stand
    intake.road_speed = stock.cooling.known_road_speed;
    settle_flow(stock, fuel, intake);
    return intake;
}

}  // namespace windwall::engine
