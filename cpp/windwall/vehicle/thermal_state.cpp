#include "windwall/vehicle/thermal_state.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"

#include <algorithm>

namespace windwall::vehicle {
namespace {

constexpr double coldest = 1, hottest = 1e5;  // K, beyond anything that is still a part

bool comes_to_rest(const NodeState& node) {
    return node.heat_capacity > 0 && node.heat_flow(coldest) > 0 && node.heat_flow(hottest) < 0;
}

void settle(NodeState& node) {
    node.temperature = numerics::find_root(node.heat_flow, coldest, hottest, {0, 1e-13, 200}).x;
    node.policy = TemperaturePolicy::at_rest;
}

void add_engine(const Balance& balance, ThermalState& state) {
    const Vehicle& vehicle = balance.vehicle();
    vehicle.engine.visit([&]<class Engine>(const Engine& engine) {
        if constexpr (engine::Thermal<Engine>)
            state.add("engine",
                      engine.thermal_nodes(balance.intake(balance.manifold()), vehicle.fuel));
    });
}

void add_charge_path(const Balance& balance, ThermalState& state) {
    for (std::size_t i = 0; i < balance.stations().size(); ++i) {
        const auto& entry = balance.vehicle().charge_path[i];
        const Station& station = balance.stations()[i];
        charge::Surroundings surroundings = balance.surroundings();
        surroundings.drive_speed = station.drive_speed;
        entry.part.visit([&]<class Part>(const Part& each) {
            if constexpr (charge::Thermal<Part>)
                state.add("charge_path/" + entry.id,
                          each.thermal_nodes(station.inlet, station.outlet.pressure, surroundings));
        });
    }
}

void add_driveline(const Balance& balance, double torque, driveline::GearState gear_state,
                   ThermalState& state) {
    const Driveline& train = balance.vehicle().driveline;
    std::vector<double> losses(train.size());
    driveline::drive(train, {balance.condition().engine_speed, torque}, gear_state, losses);
    const double air = balance.surroundings().under_hood_temperature;
    for (std::size_t i = 0; i < train.size(); ++i)
        train[i].part.visit([&]<class Part>(const Part& part) {
            if constexpr (driveline::Thermal<Part>)
                state.add("driveline/" + train[i].id, part.thermal_nodes(losses[i], air));
        });
}

}  // namespace

double NodeState::rate(double at) const {
    return policy == TemperaturePolicy::integrated ? heat_flow(at) / heat_capacity : 0;
}

void ThermalState::add(NodeState node, const std::optional<double>& stated) {
    if (stated) {
        node.temperature = *stated;
        node.policy = TemperaturePolicy::given;
    } else if (comes_to_rest(node)) {
        vehicle::settle(node);
    } else {
        return;
    }
    nodes_.push_back(std::move(node));
}

void ThermalState::start_from(double temperature) {
    for (NodeState& node : nodes_) {
        if (node.policy == TemperaturePolicy::given) continue;
        node.temperature = temperature;
        node.policy = TemperaturePolicy::integrated;
    }
}

void ThermalState::settle() {
    for (NodeState& node : nodes_)
        if (node.policy != TemperaturePolicy::given) vehicle::settle(node);
}

void ThermalState::rates(std::span<const double> temperatures, std::span<double> rates) const {
    for (std::size_t i = 0; i < nodes_.size(); ++i)
        rates[i] = nodes_[i].rate(temperatures[i]);
}

const NodeState* ThermalState::find(std::string_view address) const noexcept {
    const auto found = std::ranges::find(nodes_, address, &NodeState::address);
    return found == nodes_.end() ? nullptr : &*found;
}

ThermalState thermal_state(const Balance& balance, double torque, driveline::GearState gear_state) {
    ThermalState state;
    add_engine(balance, state);
    add_charge_path(balance, state);
    add_driveline(balance, torque, gear_state, state);
    state.add("under_hood", balance.vehicle().engine_bay.thermal_nodes(balance.surroundings()));
    return state;
}

}  // namespace windwall::vehicle
