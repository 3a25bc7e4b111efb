#pragma once
#include "windwall/media/thermal_node.hpp"
#include "windwall/vehicle/balance/balance.hpp"

#include <functional>
#include <span>
#include <string>
#include <vector>

/// Temperatures that take time, apart from the vehicle that they belong to.
namespace windwall::vehicle {

/// Where a temperature comes from: stated by the scenario; where heat in and heat out balance, as
/// in a long pull; or what an integration over time makes of it.
enum class TemperaturePolicy { given, at_rest, integrated };

/// One node and its temperature.
struct NodeState {
    std::string address;                      // of its part, and its name in it
    double heat_capacity{};                   // J/K
    std::function<double(double)> heat_flow;  // W at a temperature in K
    double temperature{};                     // K
    TemperaturePolicy policy = TemperaturePolicy::at_rest;

    /// K/s at a temperature in K; nothing unless it is integrated.
    double rate(double at) const;
};

/// The temperatures of a vehicle at one operating point, with everything that answers at once held
/// as it is there.
class ThermalState {
public:
    /// Nodes of one owner, each at its stated temperature or at rest. A node that no heat reaches
    /// or that none leaves has no temperature to come to, and is left out unless it is stated.
    template <media::ThermalNodes Nodes>
    void add(const std::string& owner, const Nodes& nodes) {
        for (const auto& node : nodes)
            add({owner + "/" + std::string(node.name), node.heat_capacity,
                 [node](double at) { return node.heat_flow(at); }},
                node.stated);
    }

    /// From now on every node that is not given is integrated, from a temperature in K.
    void start_from(double temperature);
    /// Brings every node that is not given to rest.
    void settle();
    /// K/s of all nodes at temperatures in K, for an integrator.
    void rates(std::span<const double> temperatures, std::span<double> rates) const;

    std::span<const NodeState> nodes() const noexcept { return nodes_; }
    /// Null where there is none.
    const NodeState* find(std::string_view address) const noexcept;

private:
    void add(NodeState node, const std::optional<double>& stated);

    std::vector<NodeState> nodes_;
};

/// Every node of the engine, the charge path, the driveline and the air under the bodywork, where
/// the balance was left, with the engine's work there and a torque in N m at the flywheel.
ThermalState thermal_state(const Balance& balance, const engine::Work& work, double torque,
                           driveline::GearState gear_state = {});

}  // namespace windwall::vehicle
