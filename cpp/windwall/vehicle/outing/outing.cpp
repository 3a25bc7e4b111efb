#include "windwall/vehicle/outing/outing.hpp"

#include "windwall/fields/lookup.hpp"

namespace windwall::vehicle {
namespace {

using namespace fields;

constexpr Column road_columns[] = {
    {"distance", length("m"), {0, 1e5}, "Distance from where a run starts, rising"},
    {"grade", percent(), {-20, 20}, "Slope there, rise over run, uphill positive"},
    {"headwind", speed("m/s"), {-20, 20}, "Wind against the direction of travel there"},
};

bool needs_standstill(const Leg& leg) {
    return leg.visit([]<class T>(const T&) {
        return requires { T::from_standstill; };
    });
}

// Whether the vehicle stands behind a leg.
bool stands_behind(const Leg& leg, bool stood) {
    if (leg.as<Idle>() || leg.as<Stop>()) return true;
    const auto* coast = leg.as<Coast>();
    return coast && (stood || coast->to_speed == 0);
}

}  // namespace

std::vector<MisplacedLeg> Outing::misplaced_legs() const {
    std::vector<MisplacedLeg> misplaced;
    bool stands = true;
    for (std::size_t at = 0; at < legs.size(); ++at) {
        const auto& leg = legs[at];
        if (!stands && needs_standstill(leg))
            misplaced.push_back({at, "\"" + std::string(leg.kind()) +
                                         "\" begins at a standstill, and the leg before it leaves "
                                         "the vehicle moving: put a \"stop\" between them"});
        stands = stands_behind(leg, stands);
    }
    return misplaced;
}

std::optional<Violation> Outing::check() const {
    if (road.empty() || rises(road)) return std::nullopt;
    return Violation{"road", "distances must rise from row to row"};
}

std::span<const Row> Outing::rows() {
    static constexpr Row table[] = {
        text("title", at<&Outing::title>, "What the outing is called in tables and plots"),
        choice("starts", at<&Outing::starts>,
               "How warm it sets out: cold, all as the day's air; idling, as after a long idle; "
               "soaked, as after a long pull",
               "idling, chosen by the project"),
        optional("shift_speed", "N_s", at<&Outing::shift_speed>, angular_speed("rpm"), {500, 20000},
                 "Engine speed at which the next gear is taken; where it pushes harder, if it is "
                 "not stated"),
        optional("shift_time", "t_s", at<&Outing::shift_time>, time("s"), {0, 10},
                 "Time without drive at a change of gear; that of the gearbox where it is not "
                 "stated"),
        flag("lift", at<&Outing::lift>, "Whether the pedal is released while a gear is changed",
             "common practice"),
        optional("launch_speed", "N_c", at<&Outing::launch_speed>, angular_speed("rpm"),
                 {500, 12000},
                 "Engine speed held while the clutch slips; that of the clutch where it is not "
                 "stated"),
        whole(optional("launch_gear", "g", at<&Outing::launch_gear>, number(), {1, 128},
                       "Gear of the launch, counted from 1")),
        optional("road_length", "s", at<&Outing::road_length>, length("m"), {10, 1e5},
                 "Length of the road from where a run starts, behind which nothing is answered"),
        optional("fuel_on_board", "V_f", at<&Outing::fuel_on_board>, volume("L"), {0.01, 500},
                 "Fuel in the tank when it sets out; without end where it is not stated"),
        optional("liquid_on_board", "V_l", at<&Outing::liquid_on_board>, volume("L"), {0.01, 500},
                 "Liquid for all nozzles together; without end where it is not stated"),
        fields::table("road", at<&Outing::road>, road_columns,
                      "Slope and wind over the distance from where a run starts, in place of the "
                      "goal's and the day's; its ends are held beyond it"),
    };
    return table;
}

}  // namespace windwall::vehicle
