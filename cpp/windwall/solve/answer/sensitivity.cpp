#include "windwall/solve/answer/sensitivity.hpp"

#include "windwall/solve/full_throttle/top_speed.hpp"

#include <functional>

namespace windwall::solve {
namespace {

using vehicle::Vehicle;
using vehicle::WhatIf;

struct Change {
    std::string_view words;
    std::function<void(Vehicle&, WhatIf&)> make;
};

/// Makes the overall ratio of every gear longer or shorter, wherever the driveline allows it.
void scale_ratio(Vehicle& vehicle, double factor) {
    for (auto& entry : vehicle.driveline) {
        if (auto* gearbox = entry.part.as<driveline::Gearbox>()) {
            for (double& ratio : gearbox->ratios)
                ratio *= factor;
            return;
        }
        if (auto* final_drive = entry.part.as<driveline::FinalDrive>()) {
            final_drive->fixed_ratio *= factor;
            return;
        }
    }
}

void octane(Vehicle& vehicle, double more) {
    vehicle.fuel.research_octane += more;
    vehicle.fuel.motor_octane += more;
}

std::vector<Change> changes() {
    return {
        {"power +1 %", [](Vehicle&, WhatIf& what_if) { what_if.torque_factor = 1.01; }},
        {"drag area -1 %", [](Vehicle& car, WhatIf&) { car.body.drag_area *= 0.99; }},
        {"mass -1 %", [](Vehicle& car, WhatIf&) { car.body.mass *= 0.99; }},
        {"charge -10 K", [](Vehicle&, WhatIf& what_if) { what_if.charge_temperature = -10; }},
        {"octane number +1", [](Vehicle& car, WhatIf&) { octane(car, 1); }},
        {"gearing 1 % shorter", [](Vehicle& car, WhatIf&) { scale_ratio(car, 1.01); }},
        {"gearing 1 % longer", [](Vehicle& car, WhatIf&) { scale_ratio(car, 0.99); }},
    };
}

}  // namespace

std::vector<Sensitivity> sensitivities(const Vehicle& vehicle, double speed) {
    std::vector<Sensitivity> found;
    for (const Change& change : changes()) {
        Vehicle changed = vehicle;
        WhatIf what_if;
        change.make(changed, what_if);
        const TopSpeed now = top_speed(changed, what_if);
        Sensitivity entry{std::string(change.words), std::nullopt};
        if (now.outcome.answered()) entry.gain = now.speed() - speed;
        found.push_back(std::move(entry));
    }
    return found;
}

}  // namespace windwall::solve
