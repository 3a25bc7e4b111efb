#include "windwall/solve/results/account.hpp"

#include "windwall/driveline/train.hpp"

#include <numeric>
#include <utility>

namespace windwall::solve {
namespace {

using vehicle::Balance;
using Entries = std::vector<AccountEntry>;
using enum PowerUse;

double sum(const Entries& entries) {
    return std::accumulate(entries.begin(), entries.end(), 0.0,
                           [](double total, const auto& entry) { return total + entry.watts; });
}

template <class Visit>
void for_each_station(const Balance& balance, Visit&& visit) {
    const auto& path = balance.vehicle().charge_path;
    for (std::size_t i = 0; i < path.size(); ++i) {
        path[i].part.visit(
            [&](const auto& part) { visit(path[i].id, part, balance.stations()[i]); });
    }
}

void add_driveline(const Balance& balance, const FullThrottlePoint& full_throttle,
                   Entries& entries) {
    const auto& train = balance.vehicle().driveline;
    std::vector<double> losses(train.size());
    const driveline::Shaft crank{full_throttle.point.condition.engine_speed,
                                 full_throttle.point.torque};
    driveline::drive(train, crank, full_throttle.gear_state(), losses);
    for (std::size_t i = 0; i < train.size(); ++i)
        entries.push_back({part, losses[i], train[i].id});
    const double slowing = driveline::slowing_power(train, crank, full_throttle.gear_state());
    if (slowing != 0) entries.push_back({crank_slowing, -slowing});
}

/// What the wheels turn against more than the road moves back.
double slip_power(const Balance& balance, const FullThrottlePoint& full_throttle) {
    const driveline::Shaft wheels =
        driveline::drive(balance.vehicle().driveline,
                         {full_throttle.point.condition.engine_speed, full_throttle.point.torque},
                         full_throttle.gear_state());
    return wheels.power() - full_throttle.thrust * full_throttle.road_speed;
}

void add_road(const FullThrottlePoint& full_throttle, Entries& entries) {
    entries.push_back({rolling, full_throttle.load.rolling * full_throttle.road_speed});
    entries.push_back({air, full_throttle.load.air * full_throttle.road_speed});
    entries.push_back({grade, full_throttle.load.grade * full_throttle.road_speed});
    entries.push_back({acceleration, full_throttle.excess_force() * full_throttle.road_speed});
}

/// Heat the gas gives off in the parts it passes, and what a blower sheds beside its charge.
void add_charge_path(const Balance& balance, Entries& entries) {
    for_each_station(balance, [&]<class Part>(const std::string& id, const Part&,
                                              const vehicle::Station& station) {
        if constexpr (charge::Driven<Part>) {
            const charge::Compression& did = station.compression;
            entries.push_back({belt, did.belt_loss, id});
            entries.push_back({casing, did.casing_loss + did.bearing_loss, id});
        } else if constexpr (charge::Passive<Part>) {
            const double heat =
                charge::Leaking<Part> ? balance.heat_lost(station) : station.heat_given_off();
            if (heat != 0) entries.push_back({PowerUse::part, heat, id});
        }
    });
}

}  // namespace

double Account::gap() const { return total.watts - sum(entries); }

Account shaft_account(const Balance& balance, const FullThrottlePoint& full_throttle) {
    const engine::Work& work = full_throttle.point.work;
    Account account{
        {indicated, work.indicated},
        {{rubbing, work.rubbing}, {pumping, work.pumping}, {accessories, work.accessories}}};
    for_each_station(balance, [&]<class Part>(const std::string& id, const Part&,
                                              const vehicle::Station& station) {
        if constexpr (charge::Driven<Part>) {
            account.entries.push_back({belt, station.compression.belt_loss, id});
            account.entries.push_back({shaft, station.compression.shaft_power, id});
        }
    });
    add_driveline(balance, full_throttle, account.entries);
    account.entries.push_back({tyre_slip, slip_power(balance, full_throttle)});
    add_road(full_throttle, account.entries);
    return account;
}

HeatAccount heat_account(const Balance& balance, const FullThrottlePoint& full_throttle) {
    const engine::Work& work = full_throttle.point.work;
    const engine::Intake intake = balance.intake(balance.manifold());
    const engine::ExhaustGas exhaust = balance.vehicle().engine.visit([&](const auto& engine) {
        return engine.exhaust_gas(intake, balance.vehicle().fuel, work);
    });
    const engine::Heat heat = engine::heat(work, exhaust);
    HeatAccount made;
    made.account = {{fuel, work.fuel_power},
                    {{road, full_throttle.thrust * full_throttle.road_speed},
                     {tyre_slip, slip_power(balance, full_throttle)},
                     {rubbing, work.rubbing},
                     {accessories, work.accessories},
                     {walls, heat.walls},
                     {unburnt_fuel, heat.unburnt}}};
    Entries& entries = made.account.entries;
    add_driveline(balance, full_throttle, entries);
    add_charge_path(balance, entries);
    made.exhaust_temperature = exhaust.temperature;
    entries.push_back({PowerUse::exhaust, exhaust.heat});
    return made;
}

}  // namespace windwall::solve
