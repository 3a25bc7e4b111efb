#pragma once
#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/balance/balance.hpp"

#include <cstddef>
#include <span>

namespace windwall::vehicle {

/// Who owns a node: the engine, a part of the charge path or of the driveline by its number, or the
/// bodywork with the air under it.
struct NodeOwner {
    enum class Of { engine, charge_path, driveline, under_hood };
    Of of{};
    std::size_t part = 0;
};

/// Every node of the engine, the charge path, the driveline and the air under the bodywork, in this
/// order, as they are where the balance was left with the engine's work there: `visit(owner,
/// node)`. The watts that the parts of the driveline turn into heat in the train's order.
template <class Visit>
void for_each_node(const Balance& balance, const engine::Work& work,
                   std::span<const double> driveline_losses, Visit&& visit) {
    const Vehicle& vehicle = balance.vehicle();
    const auto all_of = [&](NodeOwner owner, const auto& nodes) {
        for (const auto& node : nodes)
            visit(owner, node);
    };
    vehicle.engine.visit([&]<class Engine>(const Engine& engine) {
        if constexpr (engine::Thermal<Engine>)
            all_of({NodeOwner::Of::engine},
                   engine.thermal_nodes(balance.intake(balance.manifold()), vehicle.fuel, work));
    });
    for (std::size_t i = 0; i < balance.stations().size(); ++i) {
        const Station& station = balance.stations()[i];
        vehicle.charge_path[i].part.visit([&]<class Part>(const Part& part) {
            if constexpr (charge::Thermal<Part>)
                all_of({NodeOwner::Of::charge_path, i},
                       part.thermal_nodes(station.inlet, station.outlet.pressure,
                                          balance.surroundings_of(station)));
        });
    }
    const double air = balance.surroundings().under_hood_temperature;
    for (std::size_t i = 0; i < vehicle.driveline.size(); ++i)
        vehicle.driveline[i].part.visit([&]<class Part>(const Part& part) {
            if constexpr (driveline::Thermal<Part>)
                all_of({NodeOwner::Of::driveline, i}, part.thermal_nodes(driveline_losses[i], air));
        });
    all_of({NodeOwner::Of::under_hood}, vehicle.engine_bay.thermal_nodes(balance.surroundings()));
}

}  // namespace windwall::vehicle
