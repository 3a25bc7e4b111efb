#include "windwall/vehicle/outing/legs.hpp"

#include <algorithm>
#include <initializer_list>
#include <string>
#include <utility>

namespace windwall::vehicle {
namespace {

using namespace fields;

constexpr std::string_view until_speed = "Until this speed over the ground";
constexpr std::string_view until_distance = "Until so far from where the leg began";
constexpr std::string_view until_time = "Until so long after the leg began";

constexpr Row to_speed(Member member, double least, std::string_view sentence) {
    return optional("to_speed", "v", member, speed("km/h"), {least, 600}, sentence);
}

constexpr Row for_distance(Member member) {
    return optional("for_distance", "s", member, length("m"), {1, 1e5}, until_distance);
}

constexpr Row for_time(Member member) {
    return optional("for_time", "t", member, time("s"), {0.1, 3600}, until_time);
}

constexpr Row standing_time(Member member, std::string_view sentence) {
    return required("time", "t", member, time("s"), {0.1, 14400}, sentence);
}

using End = std::pair<std::string_view, const std::optional<double>&>;

// A leg has one end: none of those it could have, or more than one, is a violation.
std::optional<Violation> ends_once(std::initializer_list<End> ends) {
    const auto stated = [](const End& end) { return end.second.has_value(); };
    const auto first = std::ranges::find_if(ends, stated);
    if (first == ends.end()) {
        std::string all;
        for (const auto& [key, value] : ends)
            all += (all.empty()                      ? ""
                    : key == (ends.end() - 1)->first ? " or "
                                                     : ", ") +
                   std::string(key);
        return Violation{ends.begin()->first, "a leg has an end: state one of " + all};
    }
    const auto second = std::find_if(first + 1, ends.end(), stated);
    if (second == ends.end()) return std::nullopt;
    return Violation{second->first, "the leg ends with " + std::string(first->first) +
                                        " already: state one of the two"};
}

}  // namespace

std::span<const Row> Idle::rows() {
    static constexpr Row table[] = {
        standing_time(at<&Idle::time>, "How long the engine idles"),
        optional("engine_speed", "N", at<&Idle::engine_speed>, angular_speed("rpm"), {200, 6000},
                 "Engine speed meanwhile; that of the vehicle's idle where it is not stated"),
    };
    return table;
}

std::span<const Row> Launch::rows() {
    static constexpr Row table[] = {
        optional("engine_speed", "N", at<&Launch::engine_speed>, angular_speed("rpm"), {500, 12000},
                 "Engine speed while the clutch slips; that of the outing where it is not stated"),
    };
    return table;
}

std::optional<Violation> FullThrottle::check() const {
    return ends_once({{"to_speed", to_speed},
                      {"for_distance", for_distance},
                      {"for_time", for_time},
                      {"to_engine_speed", to_engine_speed}});
}

std::span<const Row> FullThrottle::rows() {
    static constexpr Row table[] = {
        vehicle::to_speed(at<&FullThrottle::to_speed>, 1, until_speed),
        vehicle::for_distance(at<&FullThrottle::for_distance>),
        vehicle::for_time(at<&FullThrottle::for_time>),
        optional("to_engine_speed", "N", at<&FullThrottle::to_engine_speed>, angular_speed("rpm"),
                 {500, 20000}, "Until this engine speed, in the gear in which it is met first"),
    };
    return table;
}

std::optional<Violation> HoldSpeed::check() const {
    return ends_once({{"for_time", for_time}, {"for_distance", for_distance}});
}

std::span<const Row> HoldSpeed::rows() {
    static constexpr Row table[] = {
        required("speed", "v", at<&HoldSpeed::speed>, fields::speed("km/h"), {5, 600},
                 "Speed over the ground that is held"),
        vehicle::for_time(at<&HoldSpeed::for_time>),
        vehicle::for_distance(at<&HoldSpeed::for_distance>),
    };
    return table;
}

std::optional<Violation> Coast::check() const {
    return ends_once(
        {{"to_speed", to_speed}, {"for_distance", for_distance}, {"for_time", for_time}});
}

std::span<const Row> Coast::rows() {
    static constexpr Row table[] = {
        flag("in_gear", at<&Coast::in_gear>, "Whether the engine is dragged along",
             "out of gear, chosen by the project"),
        vehicle::to_speed(at<&Coast::to_speed>, 0, "Until it is as slow as this over the ground"),
        vehicle::for_distance(at<&Coast::for_distance>),
        vehicle::for_time(at<&Coast::for_time>),
    };
    return table;
}

std::span<const Row> Stop::rows() {
    static constexpr Row table[] = {
        with_default("deceleration", "a", at<&Stop::deceleration>, acceleration("m/s2"), {0.2, 12},
                     1, "How hard it brakes", "a firm foot short of locking, common practice"),
        standing_time(at<&Stop::time>, "How long it stands then"),
        choice("engine", at<&Stop::engine>, "What the engine does meanwhile",
               "idling, chosen by the project"),
        choice("hood", at<&Stop::hood>,
               "Whether the engine is uncovered meanwhile; what is open on the road stays open",
               "closed, chosen by the project"),
        flag("turn_round", at<&Stop::turn_round>,
             "Whether it is turned round meanwhile: the next run comes back from where it stands, "
             "slope and wind reversed; else it begins where the first did",
             "not turned, chosen by the project"),
    };
    return table;
}

}  // namespace windwall::vehicle
