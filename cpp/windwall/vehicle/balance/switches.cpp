// What the switches of pumps read on the way of the air.
#include "windwall/vehicle/balance/balance.hpp"

#include <algorithm>

namespace windwall::vehicle {

/// Before a part that is switched: what stands behind it on the way was assumed, what stands before
/// it is known by now. The part itself holds nothing back, so behind it is as before it.
void Balance::sense(std::size_t part, const media::Stream& gas) noexcept {
    Station& here = stations_[part];
    for (const PressureSwitch& each : air_.switches) {
        if (each.part != part) continue;
        if (each.station == part) here.sensed_pressure = gas.pressure;
        if (each.station < part) here.sensed_pressure = stations_[each.station].outlet.pressure;
    }
    surroundings_.sensed_pressure = here.sensed_pressure;
}

double Balance::switch_pressure(const PressureSwitch& each) const noexcept {
    return stations_[each.station].outlet.pressure / surroundings_.ambient_pressure;
}

charge::Surroundings Balance::surroundings_of(const Station& station) const noexcept {
    charge::Surroundings around = surroundings_;
    around.sensed_pressure = station.sensed_pressure;
    around.drive_speed = station.drive_speed;
    const auto part = static_cast<std::size_t>(&station - stations_.data());
    if (state_ && part < state_->path.size()) around.held = state_->path[part];
    return around;
}

std::optional<double> Balance::fuel_cut() const noexcept {
    std::optional<double> left;
    for (std::size_t i = 0; i < stations_.size(); ++i) {
        vehicle_->charge_path[i].part.visit([&]<class Part>([[maybe_unused]] const Part& part) {
            if constexpr (charge::Cutting<Part>) {
                if (!part.fuel_cut) return;
                const Station& here = stations_[i];
                const double running = part.spray(here.inlet, surroundings_of(here)).running;
                left = left.value_or(1) * (1 - *part.fuel_cut * running);
            }
        });
    }
    return left ? std::optional(1 - *left) : std::nullopt;
}

double Balance::follow_switches(std::span<double> x) const noexcept {
    double largest = 0;
    for (const PressureSwitch& each : air_.switches) {
        if (each.pressure == AirPath::none) continue;
        const double reads = switch_pressure(each);
        largest = std::max(largest, std::abs(reads - x[each.pressure]));
        x[each.pressure] = reads;
    }
    return largest;
}

}  // namespace windwall::vehicle
