// What the numbers of a drive's state mean to the vehicle, and how they change.
#include "windwall/charge/spray_in_time.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/engine/own_fuel.hpp"
#include "windwall/road/body.hpp"
#include "windwall/road/tyres.hpp"
#include "windwall/solve/drive/motion.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace windwall::solve {
namespace {

using vehicle::NodeOwner;

constexpr double kilo = 1000;

std::string address_of(const vehicle::Vehicle& car, const NodeOwner& owner, std::string_view name) {
    const std::string node(name);
    switch (owner.of) {
        case NodeOwner::Of::engine: return "engine/" + node;
        case NodeOwner::Of::charge_path:
            return "charge_path/" + car.charge_path[owner.part].id + "/" + node;
        case NodeOwner::Of::driveline:
            return "driveline/" + car.driveline[owner.part].id + "/" + node;
        case NodeOwner::Of::under_hood: break;
    }
    return "under_hood/" + node;
}

/// W into a node at a temperature in K while the engine stands: what metals lead to each other and
/// to the air.
template <class Node>
double cooling(const Node& node, double temperature) {
    if constexpr (requires { node.still_flow(temperature); })
        return node.still_flow(temperature);
    else
        return node.heat_flow(temperature);
}

constexpr double least_rise = 1;  // K, of what is divided by

template <class T>
double rest_of(const T& node) {
    double low = 1, high = 1e5;
    if (!(node.heat_flow(low) > 0 && node.heat_flow(high) < 0)) return 0;
    for (int i = 0; i < 200 && high - low > 1e-10; ++i) {
        const double middle = (low + high) / 2;
        (node.heat_flow(middle) > 0 ? low : high) = middle;
    }
    return (low + high) / 2;
}

/// How warm something is over the day's air, over what it would be at rest, all in K: no more than
/// that, since the rise that is stated for a warm engine is often read behind a pull.
double warmth_of(double temperature, double rest, double day) noexcept {
    return std::clamp((temperature - day) / std::max(rest - day, least_rise), 0.0, 1.0);
}

}  // namespace

/// Solves the point at whose rest an outing begins: warmed through, or idling.
bool Motion::rest(vehicle::Starts starts) {
    solver_.hold_state(nullptr);
    moment_ = {};
    std::ranges::fill(losses_, 0);
    if (starts != vehicle::Starts::soaked) {
        idle();
        return moment_.answered;
    }
    const auto top = solve::top_speed(car_).equilibrium.full_throttle;
    if (!top) return false;
    moment_.road_speed = top->road_speed;
    if (!ask(top->point.condition.engine_speed, 1)) return false;
    driveline::drive(car_.driveline, {top->point.condition.engine_speed, moment_.point.torque},
                     top->gear_state(), losses_);
    return true;
}

bool Motion::set_out(vehicle::Starts starts, std::vector<double>& state) {
    if (!rest(starts)) return false;
    find_nodes();
    state.assign(layout_.size(), 0);
    state[Layout::engine_speed] = idle_speed_;
    if (layout_.trims) state[layout_.trim()] = kilo * injected_need();
    for (std::size_t i = 0; i < layout_.nodes.size(); ++i) {
        const DriveNode& node = layout_.nodes[i];
        const bool cold = starts == vehicle::Starts::cold && !(node.stated && node.rest > 0);
        state[Layout::first_node + i] = cold || !(node.rest > 0) ? car_.day.temperature : node.rest;
    }
    const Moment& now = at({}, {car_.goal.grade, car_.day.headwind}, state);
    if (layout_.wet)
        for (std::size_t i = 0; i < Layout::liquids; ++i)
            state[layout_.first_film() + i] =
                kilo * film_time_ * solver_.balance().film_arriving()[i];
    return now.answered;
}

/// The nodes of the last point, with where they would come to rest there.
void Motion::find_nodes() {
    layout_.nodes.clear();
    vehicle::for_each_node(
        solver_.balance(), moment_.point.work, losses_,
        [&](const NodeOwner& owner, const auto& node) {
            const double rest = node.stated ? *node.stated : rest_of(node);
            layout_.nodes.push_back({owner, address_of(car_, owner, node.name), node.heat_capacity,
                                     node.stated.has_value() || !(rest > 0), rest});
        });
    moment_.heating.assign(layout_.nodes.size(), 0);
    layout_.wet = film_time_ > 0 && std::ranges::any_of(car_.charge_path, [](const auto& entry) {
                      return entry.part.visit([]<class Part>(const Part&) {
                          return charge::Wetting<Part> || charge::Carburetting<Part>;
                      });
                  });
    layout_.pumps.clear();
    for (std::size_t i = 0; i < car_.charge_path.size(); ++i)
        if (car_.charge_path[i].part.visit(
                []<class Part>(const Part&) { return charge::Spraying<Part>; }))
            layout_.pumps.push_back(i);
    layout_.trims = trim_time_ > 0;
}

/// What is integrated is held while the balance is sought.
void Motion::hold(const Mode& mode, std::span<const double> state) {
    held_.path.assign(car_.charge_path.size(), {});
    std::size_t engine_node = 0;
    for (std::size_t i = 0; i < layout_.nodes.size(); ++i) {
        const DriveNode& node = layout_.nodes[i];
        const double T = state[Layout::first_node + i];
        if (node.owner.of == NodeOwner::Of::engine) {
            const std::array places{&held_.head, &held_.oil, &held_.block};
            if (engine_node < places.size()) *places[engine_node++] = T;
        } else if (node.owner.of == NodeOwner::Of::charge_path && !node.stated) {
            held_.path[node.owner.part].metal = T;
        } else if (node.owner.of == NodeOwner::Of::under_hood) {
            held_.under_hood = T;
        }
    }
    if (layout_.wet) {
        auto& film = held_.film.emplace();
        for (std::size_t i = 0; i < film.size(); ++i)
            film[i] = std::max(0.0, state[layout_.first_film() + i]) / kilo / film_time_;
    }
    for (std::size_t k = 0; k < layout_.pumps.size() && k < mode.pumps.size(); ++k) {
        charge::Held& held = held_.path[layout_.pumps[k]];
        const double running = state[layout_.first_pump() + Layout::of_a_pump * k];
        held.running = mode.dry ? 0 : std::clamp(running, 0.0, 1.0);
        held.line_filled = mode.pumps[k].full ? 1.0 : 0.0;
    }
    if (layout_.trims) held_.trim = state[layout_.trim()] / kilo;
    solver_.hold_state(&held_);
}

/// What the switches read, and how pumps and lines follow.
void Motion::pump(const Mode& mode, std::span<const double> state) {
    moment_.pumps.assign(layout_.pumps.size(), {-1, 0, 0});
    const bool runs = moment_.answered && mode.phase != Phase::engine_off;
    const vehicle::Balance& balance = solver_.balance();
    for (std::size_t k = 0; k < layout_.pumps.size() && k < mode.pumps.size(); ++k) {
        const vehicle::Station& station = balance.stations()[layout_.pumps[k]];
        const PumpMode& now = mode.pumps[k];
        const double running = state[layout_.first_pump() + Layout::of_a_pump * k];
        car_.charge_path[layout_.pumps[k]].part.visit([&]<class Part>(const Part& nozzle) {
            if constexpr (charge::Spraying<Part>) {
                const auto around = balance.surroundings_of(station);
                const bool on = now.runs && runs && !mode.dry;
                const double wanted = charge::running_wanted(nozzle, on, station.inlet, around);
                Moment::Pump& pump = moment_.pumps[k];
                if (runs)
                    pump.margin =
                        charge::switch_margin(nozzle, now.switched, station.inlet, around);
                pump.running_rate = charge::running_rate(nozzle, running, wanted);
                if (!now.full && runs)
                    pump.filling_rate = charge::line_fill_rate(
                        nozzle, 0, nozzle.spray(station.inlet, around).filling);
            }
        });
    }
}

/// The air under the bodywork is warmed as the head is warm over the day's air, the first node of
/// an engine that has one: at rest as it is stated. With the engine off that goes by the rest that
/// the drive set out with.
void Motion::heat(const Mode& mode, std::span<const double> state) {
    if (!moment_.answered) return;
    const bool off = mode.phase == Phase::engine_off;
    double warmth = off ? 0 : 1;
    std::size_t i = 0;
    const auto visit = [&](const NodeOwner& owner, const auto& node) {
        if (i >= layout_.nodes.size()) return;
        const double T = state[Layout::first_node + i];
        double flow = off ? cooling(node, T) : node.heat_flow(T);
        if (i == 0 && owner.of == NodeOwner::Of::engine)
            warmth =
                warmth_of(T, off ? layout_.nodes[i].rest : rest_of(node), car_.day.temperature);
        if (owner.of == NodeOwner::Of::under_hood) flow += (off ? warmth : warmth - 1) * node.heat;
        moment_.heating[i] = layout_.nodes[i].stated ? 0 : flow / layout_.nodes[i].heat_capacity;
        ++i;
    };
    vehicle::for_each_node(solver_.balance(), moment_.point.work, losses_, visit);
}

/// kg of air per kg, that the fuel needs which reaches the engine with the charge.
double Motion::injected_need() const noexcept {
    return engine::air_for_injected(solver_.balance().manifold());
}

void Motion::rates(const Moment& moment, std::span<const double> state,
                   std::span<double> rate) const {
    std::ranges::fill(rate, 0);
    if (!moment.answered) return;
    rate[Layout::road_speed] = moment.acceleration;
    rate[Layout::distance] = std::max(0.0, moment.road_speed);  // it does not roll back
    rate[Layout::engine_speed] = moment.engine_acceleration;
    rate[Layout::fuel_used] = kilo * moment.fuel_flow;
    rate[Layout::liquid_used] = kilo * moment.liquid_flow;
    for (std::size_t i = 0; i < energies; ++i)
        rate[Layout::first_energy + i] = moment.power[i] / kilo;
    for (std::size_t i = 0; i < layout_.nodes.size(); ++i)
        rate[Layout::first_node + i] = moment.heating[i];
    for (std::size_t k = 0; k < layout_.pumps.size() && k < moment.pumps.size(); ++k) {
        rate[layout_.first_pump() + Layout::of_a_pump * k] = moment.pumps[k].running_rate;
        rate[layout_.first_pump() + Layout::of_a_pump * k + 1] = moment.pumps[k].filling_rate;
    }
    if (layout_.trims && moment.fuel_flow > 0)
        rate[layout_.trim()] =
            engine::trim_rate(state[layout_.trim()], kilo * injected_need(), trim_time_);
    if (!layout_.wet) return;
    for (std::size_t i = 0; i < Layout::liquids; ++i) {
        const std::size_t at = layout_.first_film() + i;
        const double arriving = moment.engine_speed > 0 ? solver_.balance().film_arriving()[i] : 0;
        rate[at] = kilo * arriving - state[at] / film_time_;
    }
}

double Motion::kinetic_energy(const Mode& mode, std::span<const double> state) const noexcept {
    const double v = state[Layout::road_speed];
    const double turning =
        mode.phase == Phase::slipping
            ? (mode.engine_free ? state[Layout::engine_speed] : mode.engine_speed)
            : 0;
    return (mass(mode) * v * v + crank_inertia(mode) * turning * turning) / 2;
}

}  // namespace windwall::solve
