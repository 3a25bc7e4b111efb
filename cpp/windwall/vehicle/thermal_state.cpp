#include "windwall/vehicle/thermal_state.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/vehicle/thermal_nodes.hpp"

#include <algorithm>
#include <array>

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

std::string address_of(const Vehicle& vehicle, const NodeOwner& owner) {
    switch (owner.of) {
        case NodeOwner::Of::charge_path: return "charge_path/" + vehicle.charge_path[owner.part].id;
        case NodeOwner::Of::driveline: return "driveline/" + vehicle.driveline[owner.part].id;
        case NodeOwner::Of::under_hood: return "under_hood";
        case NodeOwner::Of::engine: break;
    }
    return "engine";
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

ThermalState thermal_state(const Balance& balance, const engine::Work& work, double torque,
                           driveline::GearState gear_state) {
    ThermalState state;
    const Driveline& train = balance.vehicle().driveline;
    std::vector<double> losses(train.size());
    driveline::drive(train, {balance.condition().engine_speed, torque}, gear_state, losses);
    for_each_node(balance, work, losses, [&](const NodeOwner& owner, const auto& node) {
        state.add(address_of(balance.vehicle(), owner), std::array{node});
    });
    return state;
}

}  // namespace windwall::vehicle
