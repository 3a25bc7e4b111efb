#include "windwall/vehicle/balance.hpp"

#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>

namespace windwall::vehicle {
double Station::heat_given_off() const noexcept { return media::heat_given_off(inlet, outlet); }

Balance::Balance(const Vehicle& vehicle) : vehicle_(&vehicle) {
    const media::Day& day = vehicle.day;
    humidity_ratio_ = day.humidity_ratio();
    weather_ = media::ambient_stream(day.station_pressure(), day.temperature, humidity_ratio_, 1);
    weather_heat_ = media::enthalpy_per_dry_air(weather_);
    surroundings_.ambient_pressure = weather_.pressure;
    surroundings_.ambient_temperature = weather_.temperature;
    surroundings_.air_density = weather_.density();
    stations_.resize(vehicle.charge_path.size());
    for (const auto& entry : vehicle.charge_path) {
        valves_ += entry.part.visit(
            []<class Part>(const Part&) -> std::size_t { return charge::Balanced<Part>; });
    }
    find_loops();
    surroundings_.fuel_demand =
        vehicle.engine.visit([&](const auto& engine) { return engine.fuel_demand(vehicle.fuel); });
    carburetted_ = std::ranges::any_of(vehicle.charge_path, [](const auto& entry) {
        return entry.part.template as<charge::Carburettor>() != nullptr;
    });
}

void Balance::hold(const Condition& condition, const WhatIf& what_if) noexcept {
    condition_ = condition;
    what_if_ = what_if;
    surroundings_.road_speed = std::max(0.0, condition.road_speed + vehicle_->day.headwind);
    surroundings_.engine_speed = condition.engine_speed;
    surroundings_.throttle_opening = condition.opening;
    const UnderHood& hood = vehicle_->under_hood;
    const double rise = hood.rise_at(surroundings_.road_speed);
    surroundings_.under_hood_temperature = surroundings_.ambient_temperature + rise;
    weather_.temperature = surroundings_.ambient_temperature + hood.intake_share * rise;
    weather_.pressure = surroundings_.ambient_pressure +
                        hood.ram(surroundings_.air_density, surroundings_.road_speed);
}

void Balance::residuals(std::span<const double> x, std::span<double> r) noexcept {
    assume(x);
    std::size_t k = 0;
    const media::Stream manifold =
        propagate(std::exp(x[0]), [&]<class Part>(const Part& part, const media::Stream& inlet) {
            ++k;
            const double behind = pressure(part, inlet, x[k]);
            if constexpr (charge::Metering<Part>)
                r[k] = std::log(capacity(part, inlet, behind) / inlet.gas_flow());
            return behind;
        });
    r[0] = std::log(engine_flow_ratio(manifold));
    blower_residuals(r);
    loop_residuals(x, r);
}

/// After a march, which leaves at each blower what it would deliver.
void Balance::blower_residuals(std::span<double> r) const noexcept {
    std::size_t k = 0;
    for (std::size_t i = 0; i < stations_.size(); ++i) {
        vehicle_->charge_path[i].part.visit([&]<class Part>(const Part&) {
            k += charge::Balanced<Part>;
            if constexpr (charge::Driven<Part>)
                r[k] = stations_[i].compression.capacity / stations_[i].inlet.gas_flow() - 1;
        });
    }
}

double Balance::engine_flow_ratio(const media::Stream& manifold) const noexcept {
    const double flow = vehicle_->engine.visit(
        [&](const auto& engine) { return engine.gas_demand(intake(manifold), vehicle_->fuel); });
    return flow / manifold.gas_flow();
}

engine::Intake Balance::intake(const media::Stream& manifold) const noexcept {
    return {condition_.engine_speed,
            manifold,
            surroundings_.ambient_pressure,
            surroundings_.ambient_temperature,
            surroundings_.road_speed,
            surroundings_.under_hood_temperature,
            carburetted_};
}

std::string_view Balance::name(std::size_t k) const noexcept {
    if (k == 0) return "engine";
    for (const Loop& loop : loops_)
        if (k >= loop.unknown && k < loop.unknown + loop.unknowns())
            return vehicle_->charge_path[loop.takeoff].id;
    std::size_t seen = 0;
    for (const auto& entry : vehicle_->charge_path) {
        const bool valve =
            entry.part.visit([]<class Part>(const Part&) { return charge::Balanced<Part>; });
        if (valve && ++seen == k) return entry.id;
    }
    return "";
}

}  // namespace windwall::vehicle
