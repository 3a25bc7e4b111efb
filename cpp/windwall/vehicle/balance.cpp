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
    around_.ambient_pressure = weather_.pressure;
    around_.ambient_temperature = weather_.temperature;
    around_.air_density = weather_.density();
    stations_.resize(vehicle.charge_path.size());
    for (const auto& entry : vehicle.charge_path) {
        valves_ += entry.part.visit(
            []<class Part>(const Part&) -> std::size_t { return charge::Balanced<Part>; });
    }
    find_loops();
    around_.fuel_demand =
        vehicle.engine.visit([&](const auto& engine) { return engine.fuel_demand(vehicle.fuel); });
    carburetted_ = std::ranges::any_of(vehicle.charge_path, [](const auto& entry) {
        return entry.part.template as<charge::Carburettor>() != nullptr;
    });
}

void Balance::hold(const Condition& condition, const WhatIf& what_if) noexcept {
    condition_ = condition;
    what_if_ = what_if;
    around_.road_speed = std::max(0.0, condition.road_speed + vehicle_->day.headwind);
    around_.engine_speed = condition.engine_speed;
    around_.throttle_opening = condition.opening;
    const UnderHood& hood = vehicle_->under_hood;
    const double rise = hood.rise_at(around_.road_speed);
    around_.under_hood_temperature = around_.ambient_temperature + rise;
    weather_.temperature = around_.ambient_temperature + hood.intake_share * rise;
    weather_.pressure =
        around_.ambient_pressure + hood.ram(around_.air_density, around_.road_speed);
}

void Balance::residuals(std::span<const double> x, std::span<double> r) noexcept {
    assume(x);
    std::size_t k = 0;
    const media::Stream manifold =
        march(std::exp(x[0]), [&]<class Part>(const Part& part, const media::Stream& inlet) {
            ++k;
            const double behind = pressure(part, inlet, x[k]);
            if constexpr (charge::Metering<Part>)
                r[k] = std::log(capacity(part, inlet, behind) / inlet.gas_flow());
            return behind;
        });
    r[0] = std::log(drawn(manifold));
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
