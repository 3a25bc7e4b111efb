#include "windwall/vehicle/balance.hpp"

#include <algorithm>

namespace windwall::vehicle {

double Station::heat_given_off() const noexcept {
    return inlet.gas_flow() *
           (inlet.gas.enthalpy(inlet.temperature) - outlet.gas.enthalpy(outlet.temperature));
}

Balance::Balance(const Vehicle& vehicle) : vehicle_(&vehicle) {
    const media::Day& day = vehicle.day;
    humidity_ratio_ = day.humidity_ratio();
    weather_ = media::ambient_stream(day.station_pressure(), day.temperature, humidity_ratio_, 1);
    around_.ambient_pressure = weather_.pressure;
    around_.ambient_temperature = weather_.temperature;
    around_.under_hood_temperature = weather_.temperature;
    around_.air_density = weather_.density();
    stations_.resize(vehicle.charge_path.size());
    for (const auto& entry : vehicle.charge_path) {
        valves_ += entry.part.visit(
            []<class Part>(const Part&) -> std::size_t { return charge::Passive<Part> ? 0 : 1; });
    }
}

void Balance::hold(const Condition& condition, const WhatIf& what_if) noexcept {
    condition_ = condition;
    what_if_ = what_if;
    around_.road_speed = std::max(0.0, condition.road_speed + vehicle_->day.headwind);
    around_.engine_speed = condition.engine_speed;
    around_.throttle_opening = condition.opening;
}

void Balance::residuals(std::span<const double> x, std::span<double> r) noexcept {
    std::size_t k = 0;
    const media::Stream manifold =
        march(std::exp(x[0]), [&]<class Part>(const Part& part, const media::Stream& inlet) {
            ++k;
            const double behind = pressure(part, inlet, x[k]);
            const double passed = capacity(part, inlet, behind) / inlet.gas_flow();
            r[k] = charge::Driven<Part> ? passed - 1 : std::log(passed);
            return behind;
        });
    r[0] = std::log(drawn(manifold));
}

double Balance::drawn(const media::Stream& manifold) const noexcept {
    const double flow = vehicle_->engine.visit(
        [&](const auto& engine) { return engine.gas_demand(intake(manifold), vehicle_->fuel); });
    return flow / manifold.gas_flow();
}

engine::Intake Balance::intake(const media::Stream& manifold) const noexcept {
    return {condition_.engine_speed,
            manifold,
            around_.ambient_pressure,
            around_.ambient_temperature,
            around_.road_speed,
            around_.under_hood_temperature,
            false};
}

void Balance::guess(std::span<double> x) noexcept {
    // Behind a wide throttle little is lost and behind a small one most; behind a blower the
    // pressure is what its displacement makes of the engine's.
    const double shut = 1 - condition_.opening;
    const double lost = 0.005 + 2 * shut * shut * shut;
    std::size_t k = 0;
    const media::Stream manifold =
        march(1e-3, [&]<class Part>(const Part& part, const media::Stream& inlet) {
            double behind = inlet.pressure / (1 + lost);
            if constexpr (charge::Driven<Part>) {
                media::Stream sought = inlet;
                sought.dry_air *= drawn(inlet);
                const double swept = capacity(part, sought, inlet.pressure) / sought.gas_flow();
                behind = inlet.pressure * std::clamp(0.92 * swept, 0.6, 2.2);
            }
            x[++k] = unknown(part, inlet, behind);
            return behind;
        });
    x[0] = std::log(manifold.dry_air * drawn(manifold));
}

std::string_view Balance::name(std::size_t k) const noexcept {
    if (k == 0) return "engine";
    std::size_t seen = 0;
    for (const auto& entry : vehicle_->charge_path) {
        const bool valve =
            entry.part.visit([]<class Part>(const Part&) { return !charge::Passive<Part>; });
        if (valve && ++seen == k) return entry.id;
    }
    return "";
}

}  // namespace windwall::vehicle
