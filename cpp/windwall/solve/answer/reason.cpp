#include "windwall/solve/answer/reason.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <numbers>

namespace windwall::solve {
namespace {

using fields::readable;

std::string speed_text(double si) { return readable(si, fields::speed("km/h"), {}, 4); }
std::string rpm(double si) { return readable(si, fields::angular_speed("rpm"), {}, 4); }
std::string kilowatts(double si) { return readable(si, fields::power("kW"), {}, 3); }
std::string share(double part) { return readable(part, fields::percent(), {}, 2); }
std::string degrees(double si) { return readable(si, fields::angle("deg"), {}, 2); }

bool has_gears(const vehicle::Vehicle& vehicle) { return driveline::gears(vehicle.driveline) > 1; }

std::string belt_text(const driveline::Variator& variator, double position) {
    if (position >= 1) return " with the belt at its highest gearing";
    if (position <= 0) return " with the belt at its lowest gearing";
    return " with the belt at " + fields::readable_number(variator.ratio(position), 3) + " to 1";
}

std::string held_back(const FullThrottlePoint& pull) {
    const road::RoadLoad& load = pull.load;
    std::string text = "air takes " + share(load.air / load.total()) + " and rolling " +
                       share(load.rolling / load.total());
    if (load.grade != 0) text += " and the slope " + share(load.grade / load.total());
    return text + " of the " + kilowatts(pull.thrust * pull.road_speed) + " at the road";
}

std::string to_spare(const FullThrottlePoint& pull) {
    return readable(pull.excess_force(), fields::force("N"), {}, 3) + " of thrust to spare";
}

std::string knock_text(const Point& point) {
    if (point.outcome.status == Status::knock_limited) {
        return " The throttle is held at " + share(point.condition.opening) +
               " of its travel, because no spark in range holds the knock margin beyond it.";
    }
    if (point.spark.retard > 0) {
        return " The spark is " + degrees(point.spark.retard) +
               " late to hold the knock margin, which costs power and heats exhaust and head.";
    }
    return "";
}

std::string unanswered(const Outcome& outcome, const vehicle::Condition& condition) {
    const std::string where =
        " at " + rpm(condition.engine_speed) + ", throttle " + share(condition.opening) + " open";
    const std::string worst =
        outcome.worst.empty() ? "" : "; furthest off is " + std::string(outcome.worst);
    switch (outcome.status) {
        case Status::no_survivable_state:
            if (outcome.worst == always_knocks)
                return "No opening of the throttle down to 2 % holds the knock margin" + where +
                       ", with the latest spark in range.";
            if (outcome.worst == nothing_flows)
                return "Nothing flows that balances" + where +
                       ": whatever pressure stands in the manifold, the path passes less than the "
                       "engine draws, or a blower passes nothing.";
            return "No state that the parts survive balances" + where +
                   ": the charge runs away in temperature at " + std::string(outcome.worst) +
                   ". A blower that is throttled behind it needs a bypass, one at small flow a "
                   "smaller leak or less pressure.";
        case Status::out_of_range:
            if (outcome.worst == outgrown_tyres)
                return "The tyres grow without end" + where +
                       ": their growth, stated at 100 km/h, cannot go on as it is stated.";
            return "No answer" + where + worst + ".";
        case Status::not_converged:
            return "No balance was found" + where + worst + ", after " +
                   std::to_string(outcome.evaluations) + " evaluations.";
        default: return "No answer" + where + worst + ".";
    }
}

/// How much faster the wheels get at one engine speed until the belt has shifted up; 1 without one.
double still_to_shift(const vehicle::Vehicle& vehicle, driveline::GearState gear_state) {
    return driveline::total_ratio(vehicle.driveline, gear_state) /
           driveline::total_ratio(vehicle.driveline, gear_state.gear);
}

}  // namespace

std::string sentence(const Point& point) {
    if (!point.outcome.answered()) return unanswered(point.outcome, point.condition);
    return "At " + rpm(point.condition.engine_speed) + " the flywheel gives " +
           readable(point.torque, fields::torque("N m"), {}, 3) + " and " +
           kilowatts(point.torque * point.condition.engine_speed) + "." + knock_text(point);
}

std::string gearing(const vehicle::Vehicle& vehicle, driveline::GearState gear_state) {
    const auto variator = driveline::variator(vehicle.driveline, gear_state.gear);
    return (has_gears(vehicle) ? " in gear " + std::to_string(gear_state.gear + 1) : "") +
           (variator ? belt_text(*variator, gear_state.position) : "");
}

std::string_view limited_by(const EquilibriumSpeed& equilibrium) {
    if (equilibrium.stop == Stop::standstill || !equilibrium.pull) return "standstill";
    if (equilibrium.stop == Stop::rev_limit) return "rev_limit";
    if (equilibrium.stop == Stop::grip) return "grip";
    if (equilibrium.stop == Stop::torque_step) return "torque_step";
    if (equilibrium.stop == Stop::no_answer) return "no_answer";
    const bool knocks = equilibrium.pull->point.outcome.status == Status::knock_limited;
    return knocks ? "knock" : "drag";
}

std::string sentence(const TopSpeed& found, const vehicle::Vehicle& vehicle) {
    if (!found.outcome.answered()) {
        if (found.equilibrium.pull) return sentence(found.equilibrium.pull->point);
        if (found.unanswered) return sentence(found.unanswered->point);
        return std::string(has_gears(vehicle) ? "No gear takes the vehicle"
                                              : "Full throttle does not take the vehicle") +
               " to where the clutch stops slipping: before that the road takes the whole thrust.";
    }
    const EquilibriumSpeed& equilibrium = found.equilibrium;
    const FullThrottlePoint& pull = *equilibrium.pull;
    const std::string where = speed_text(equilibrium.road_speed) +
                              gearing(vehicle, pull.gear_state()) + " at " +
                              rpm(pull.point.condition.engine_speed);
    switch (equilibrium.stop) {
        case Stop::rev_limit:
            return "At " + where + " the engine reaches its limit with " +
                   readable(pull.excess_force(), fields::force("N"), {}, 3) +
                   " of thrust to spare" +
                   (has_gears(vehicle) ? ", and no other gear has any left there." : ".") +
                   knock_text(pull.point);
        case Stop::grip:
            return "At " + where + " the tyres hold no more than " +
                   readable(pull.thrust, fields::force("N"), {}, 3) +
                   ", and the road takes all of it.";
        case Stop::torque_step:
            return "At " + where + " there is " + to_spare(pull) +
                   ", and a little faster the torque falls away by more than that." +
                   knock_text(pull.point);
        case Stop::no_answer:
            return "At " + where + " there is " + to_spare(pull) +
                   ", and the model has no answer beyond. " + sentence(found.unanswered->point) +
                   " The driver would have to lift there.";
        default: return "At " + where + " " + held_back(pull) + "." + knock_text(pull.point);
    }
}

std::string next_to_bind(const EquilibriumSpeed& equilibrium, const vehicle::Vehicle& vehicle) {
    if (!equilibrium.pull) return "";
    const FullThrottlePoint& pull = *equilibrium.pull;
    const double speed = pull.point.condition.engine_speed;
    if (equilibrium.stop == Stop::torque_step || equilibrium.stop == Stop::no_answer) return "";
    if (equilibrium.stop == Stop::rev_limit) {
        return "Longer gearing would meet drag next: here the road takes " +
               share(pull.load.total() / pull.thrust) + " of the thrust.";
    }
    const double to_limit =
        vehicle::speed_limit(vehicle) / speed * still_to_shift(vehicle, pull.gear_state()) - 1;
    const double to_grip = vehicle.tyres.grip_limit(vehicle.body.mass) / pull.thrust - 1;
    if (to_grip < to_limit) {
        return "Next to bind is grip: the tyres hold " + share(to_grip) + " more thrust.";
    }
    return "Next to bind is the rev limit, " + share(to_limit) + " or " +
           speed_text(pull.road_speed * to_limit) + " further" +
           (has_gears(vehicle) ? " in this gear." : ".");
}

}  // namespace windwall::solve
