#include "windwall/scenario/observation.hpp"

#include "windwall/fields/lookup.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"

#include <algorithm>
#include <initializer_list>

namespace windwall::scenario {
namespace {

using fields::Violation;

constexpr std::size_t most_observations = 64;
constexpr std::size_t least_rows = 3;  // of a coast-down: two of them bend nothing

constexpr fields::Column coasting_columns[] = {
    {"time", fields::time("s"), {0, 3600}, "Time since the drive was taken off, rising"},
    {"speed", fields::speed("km/h"), {1, 600}, "Speed over the ground then, falling"},
};

Violation nothing_seen(const char* what) {
    return {"what", std::string("nothing was observed: state ") + what};
}

std::optional<Violation> seen_at_full_throttle(const Observation& seen) {
    const auto numbers = {seen.speed,
                          seen.engine_speed,
                          seen.boost,
                          seen.charge_temperature,
                          seen.inlet_depression,
                          seen.head_temperature,
                          seen.exhaust_temperature,
                          seen.lambda};
    if (seen.knock != Heard::not_listened_for) return std::nullopt;
    if (std::ranges::any_of(numbers, [](const auto& one) { return one.has_value(); }))
        return std::nullopt;
    return nothing_seen("a speed, a pressure, a temperature or what was heard of knock");
}

std::optional<Violation> seen_at_a_held_speed(const Observation& seen) {
    if (!seen.speed) return Violation{"speed", "a held speed needs its speed"};
    if (!seen.fuel_used) return nothing_seen("the fuel_used at this speed");
    if (seen.time || seen.distance) return std::nullopt;
    return Violation{"fuel_used", "over what? State the distance or the time that it took"};
}

std::optional<Violation> seen_from_standstill(const Observation& seen) {
    if (!seen.time) return nothing_seen("the time that it took");
    if (seen.distance.has_value() != seen.speed.has_value()) return std::nullopt;
    return Violation{"time", "to where? State either the distance or the speed it was taken at"};
}

std::optional<Violation> seen_coasting(const Observation& seen) {
    if (seen.coasting.empty()) return nothing_seen("the table of time and speed, coasting");
    const auto& time = seen.coasting.column[0];
    const auto& speed = seen.coasting.column[1];
    if (time.size() < least_rows)
        return Violation{"coasting", "three rows or more tell how a vehicle slows down"};
    if (std::ranges::adjacent_find(time, std::greater_equal{}) != time.end())
        return Violation{"coasting", "times must rise from row to row"};
    if (speed.front() > speed.back()) return std::nullopt;
    return Violation{"coasting", "the last speed must be below the first"};
}

std::optional<Violation> seen_of_a_nozzle(const Observation& seen) {
    if (seen.part.empty()) return Violation{"part", "name the nozzle that was tried"};
    if (!seen.caught || !seen.time || !seen.pressure)
        return nothing_seen("what was caught, in which time, and the pressure");
    return std::nullopt;
}

/// A nozzle that is tried is one of the vehicle's.
void find_nozzle(const Observation& seen, const vehicle::Vehicle& vehicle,
                 const fields::Cursor& entry) {
    if (seen.what != Doing::jar || seen.part.empty()) return;
    for (const auto& one : vehicle.charge_path)
        if (one.id == seen.part && one.part.as<charge::EvaporativeInjection>()) return;
    entry["part"].complain("there is no evaporative_injection " + fields::in_quotes(seen.part) +
                           " in the charge path");
}

}  // namespace

std::span<const fields::Row> Observation::rows() {
    using namespace fields;
    using O = Observation;
    static constexpr Row table[] = {
        choice("what", at<&O::what>, "What the vehicle was doing", {}, Need::required),
        optional("speed", "v", at<&O::speed>, fields::speed("km/h"), {1, 600},
                 "Speed over the ground: reached, held, or at which a time was taken"),
        whole(optional("gear", "g", at<&O::gear>, number(), {1, 24}, "Gear, counted from 1")),
        optional("engine_speed", "N", at<&O::engine_speed>, angular_speed("rpm"), {200, 20000},
                 "Engine speed"),
        optional("boost", "p_m - p_a", at<&O::boost>, gauge_pressure("kPa"), {-90, 300},
                 "Pressure in the manifold above the local air"),
        optional("charge_temperature", "T_m", at<&O::charge_temperature>, temperature("degC"),
                 {-20, 250}, "Temperature of the charge in the manifold"),
        optional("inlet_depression", "p_a - p_1", at<&O::inlet_depression>,
                 pressure_difference("kPa"), {0, 90},
                 "Vacuum at a blower's inlet; of several blowers the deepest"),
        optional("head_temperature", "T_h", at<&O::head_temperature>, temperature("degC"),
                 {20, 400}, "Temperature of the cylinder head"),
        optional("exhaust_temperature", "T_x", at<&O::exhaust_temperature>, temperature("degC"),
                 {200, 1200}, "Temperature of the exhaust behind the port"),
        optional("lambda", "l", at<&O::lambda>, number(), {0.5, 2},
                 "Air over what the fuel needs, by a probe in the exhaust"),
        choice("knock", at<&O::knock>, "What was heard of knock", "nobody listened, unless stated"),
        optional("retard", "d", at<&O::retard>, angle("deg"), {-20, 60},
                 "Spark that was driven, crank angle after that of best torque: without it nobody "
                 "can tell what was heard of knock from a late spark"),
        optional("fuel_used", "V_f", at<&O::fuel_used>, volume("L"), {1e-3, 500},
                 "Fuel that a held speed took, over the distance or the time beside it"),
        optional("distance", "s", at<&O::distance>, length("m"), {1, 1e6},
                 "Distance that it took, from standstill or at a held speed"),
        optional("time", "t", at<&O::time>, fields::time("s"), {0.1, 1e5},
                 "Time that it took: from standstill, at a held speed, or into a jar"),
        text("part", at<&O::part>, "Id of the nozzle that was run into a jar"),
        optional("pressure", "dp_n", at<&O::pressure>, pressure_difference("bar"), {0.1, 200},
                 "Pressure across the nozzle meanwhile"),
        optional("caught", "V_l", at<&O::caught>, volume("cm3"), {1, 1e5},
                 "Water that the nozzle gave"),
        choice("way", at<&O::way>, "Which way the road was driven in a coast-down",
               "there, unless stated"),
        fields::table("coasting", at<&O::coasting>, coasting_columns,
                      "How a vehicle slowed down without drive, out of gear"),
    };
    return table;
}

std::optional<fields::Violation> Observation::check() const {
    switch (what) {
        case Doing::top_speed:
        case Doing::full_throttle: return seen_at_full_throttle(*this);
        case Doing::held_speed: return seen_at_a_held_speed(*this);
        case Doing::standing_start: return seen_from_standstill(*this);
        case Doing::coast_down: return seen_coasting(*this);
        case Doing::jar: return seen_of_a_nozzle(*this);
    }
    return std::nullopt;
}

std::vector<Observation> read_observations(const fields::Cursor& list,
                                           const vehicle::Vehicle& vehicle) {
    std::vector<Observation> read;
    if (!fields::is_list_of("observations", most_observations, list)) return read;
    for (std::size_t at = 0; at < list.size(); ++at) {
        fields::read(fields::group_type<Observation>, &read.emplace_back(), list.entry(at));
        find_nozzle(read.back(), vehicle, list.entry(at));
    }
    return read;
}

}  // namespace windwall::scenario
