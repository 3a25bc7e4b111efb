#include "windwall/vehicle/balance/balance.hpp"

#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <stdexcept>

namespace windwall::vehicle {
namespace {

constexpr std::size_t room_for_blocks = 4;
constexpr double least_flow = 1e-9;  // kg/s, of what is divided by

void require_room(const Unknowns& unknowns) {
    if (unknowns.size() > Unknowns::most)
        throw std::length_error("too many unknowns for one balance");
}

}  // namespace

double Station::heat_given_off() const noexcept { return media::heat_given_off(inlet, outlet); }

Balance::Balance(const Vehicle& vehicle)
    : vehicle_(&vehicle), fuel_(vehicle.fuel.worked_out()), air_(vehicle.charge_path) {
    require_room(air_.unknowns);
    const media::Day& day = vehicle.day;
    humidity_ratio_ = day.humidity_ratio();
    weather_ = media::ambient_stream(day.station_pressure(), day.temperature, humidity_ratio_, 1);
    weather_heat_ = media::enthalpy_per_dry_air(weather_);
    surroundings_.ambient_pressure = weather_.pressure;
    surroundings_.ambient_temperature = weather_.temperature;
    surroundings_.air_density = weather_.density();
    surroundings_.humidity_ratio = humidity_ratio_;
    stations_.resize(vehicle.charge_path.size());
    branches_.resize(air_.loops.size());
    blocks_.reserve(room_for_blocks);
    surroundings_.fuel_demand = fuel_demand_ =
        vehicle.engine.visit([&](const auto& engine) { return engine.fuel_demand(vehicle.fuel); });
    carburetted_ = std::ranges::any_of(vehicle.charge_path, [](const auto& entry) {
        return entry.part.visit([]<class Part>(const Part&) { return charge::Carburetting<Part>; });
    });
    cuts_fuel_ = std::ranges::any_of(
        vehicle.charge_path, [](const auto& entry) { return charge::cuts_fuel(entry.part); });
}

double Balance::heat_lost(const Station& station) const noexcept {
    const auto above_inlet = [&](const media::Stream& gas) {
        return gas.dry_air * (media::enthalpy_per_dry_air(gas) - gas.fed - inlet_heat_);
    };
    return above_inlet(station.inlet) - above_inlet(station.outlet);
}

void Balance::attach(Block& block) {
    blocks_.push_back({&block, air_.unknowns.size()});
    block.declare(air_.unknowns);
    if (air_.unknowns.size() <= Unknowns::most) return;
    detach();
    throw std::length_error("too many unknowns for one balance");
}

void Balance::detach() noexcept {
    air_.unknowns.shrink(blocks_.back().first);
    blocks_.pop_back();
}

void Balance::hold(const OperatingCondition& condition, const WhatIf& what_if) noexcept {
    condition_ = condition;
    what_if_ = what_if;
    surroundings_.road_speed = std::max(0.0, condition.road_speed + vehicle_->day.headwind);
    surroundings_.throttle_opening = condition.opening;
    surroundings_.engine_speed = condition.engine_speed;
    exhaust_pressure_.reset();
    enrichment_ = 0;
    surroundings_.fuel_demand = fuel_demand_;
    for (Station& station : stations_) {
        station.drive_speed = condition.engine_speed;
        station.by_crank = true;
    }
    const EngineBay& hood = vehicle_->engine_bay;
    surroundings_.held = {};
    surroundings_.block = state_ ? state_->block : std::nullopt;
    const double rise = state_ && state_->under_hood
                            ? *state_->under_hood - surroundings_.ambient_temperature
                            : hood.rise_at(surroundings_.road_speed);
    surroundings_.under_hood_temperature = surroundings_.ambient_temperature + rise;
    surroundings_.outside_film = hood.film_at(surroundings_.road_speed);
    weather_.temperature = surroundings_.ambient_temperature + hood.intake_share * rise;
    weather_.pressure = surroundings_.ambient_pressure +
                        hood.ram(surroundings_.air_density, surroundings_.road_speed);
    inlet_heat_ = media::enthalpy_per_dry_air(weather_);
}

/// What runs along the walls stays there for a while: what comes off them takes its place.
void Balance::give_back_film(media::Stream& manifold) noexcept {
    const double flow = std::max(manifold.dry_air, least_flow);
    double film = 0;
    for (std::size_t i = 0; i < film_arriving_.size(); ++i) {
        const double caught = manifold.film_share * manifold.liquid[i];
        const double returned = (*state_->film)[i] / flow;
        film_arriving_[i] = caught * flow;
        manifold.liquid[i] += returned - caught;
        // What comes off brings along what it is worth there, as what is put in by a nozzle does.
        manifold.fed += (returned - caught) *
                        media::liquid_enthalpy(media::all_vapours[i], manifold.temperature);
        film += returned;
    }
    const double liquid = manifold.liquid_share();
    manifold.film_share = liquid > 0 ? std::min(film / liquid, 1.0) : 0;
}

void Balance::set_opening(double opening) noexcept {
    condition_.opening = surroundings_.throttle_opening = opening;
}

void Balance::meter(double fuel_share) noexcept {
    for (std::size_t i = 0; i < fuel_demand_.size(); ++i)
        surroundings_.fuel_demand[i] = fuel_share * fuel_demand_[i];
}

void Balance::turn(std::size_t part, double drive_speed) noexcept {
    stations_[part].drive_speed = drive_speed;
    stations_[part].by_crank = false;
}

void Balance::residuals(std::span<const double> x, std::span<double> r) noexcept {
    assume(x);
    const media::Stream manifold =
        propagate(std::exp(x[air_.flow]),
                  [&]<class Part>(const Part& part, const media::Stream& inlet, std::size_t k) {
                      const double behind = pressure(part, inlet, x[k]);
                      if constexpr (charge::Metering<Part>)
                          r[k] = std::log(capacity(part, inlet, behind) / inlet.gas_flow());
                      return behind;
                  });
    r[air_.flow] = std::log(engine_flow_ratio(intake_ = worked_out(manifold)));
    blower_residuals(r);
    loop_residuals(x, r);
    for (const PressureSwitch& each : air_.switches)
        if (each.pressure != AirPath::none)
            r[each.pressure] = switch_pressure(each) - x[each.pressure];
    for (const Attached& each : blocks_)
        each.block->residuals(*this, x, r);
}

/// After a march, which leaves at each blower what it would deliver.
void Balance::blower_residuals(std::span<double> r) const noexcept {
    for (std::size_t i = 0; i < stations_.size(); ++i) {
        vehicle_->charge_path[i].part.visit([&]<class Part>(const Part&) {
            if constexpr (charge::Driven<Part>)
                r[air_.behind[i]] =
                    stations_[i].compression.capacity / stations_[i].inlet.gas_flow() - 1;
        });
    }
}

double Balance::engine_flow_ratio(const media::Stream& manifold) const noexcept {
    return engine_flow_ratio(worked_out(manifold));
}

double Balance::engine_flow_ratio(const engine::Intake& intake) const noexcept {
    const double flow = vehicle_->engine.visit(
        [&](const auto& engine) { return engine.gas_demand(intake, fuel_); });
    return flow / intake.charge.gas_flow();
}

engine::Intake Balance::worked_out(const media::Stream& manifold) const noexcept {
    return vehicle_->engine.visit(
        [&](const auto& engine) { return engine.worked_out(intake(manifold), fuel_); });
}

engine::Intake Balance::intake(const media::Stream& manifold) const noexcept {
    engine::Intake seen{condition_.engine_speed,
                        manifold,
                        surroundings_.ambient_pressure,
                        surroundings_.ambient_temperature,
                        surroundings_.road_speed,
                        surroundings_.under_hood_temperature,
                        carburetted_,
                        inlet_heat_,
                        exhaust_pressure_,
                        enrichment_};
    if (state_) {
        seen.head_temperature = state_->head;
        seen.oil_temperature = state_->oil;
        seen.block_temperature = state_->block;
        seen.trim = state_->trim;
    }
    if (cuts_fuel_) seen.fuel_cut = fuel_cut();
    return seen;
}

}  // namespace windwall::vehicle
