#include "windwall/engine/injector.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::engine {
namespace {

constexpr double least_speed = 1;             // rad/s: a standing engine has no cycle
constexpr double least_share_of_flow = 1e-3;  // a drop of nothing asks for a pulse without end

double cycles(double engine_speed) noexcept {
    return std::max(engine_speed, least_speed) / (4 * std::numbers::pi);
}

}  // namespace

double injector_pulse_width(double fuel_flow, double engine_speed, double rated_flow,
                            double rated_pressure, double pressure_drop, double fuel_density,
                            double dead_time, double count) noexcept {
    const double share = std::sqrt(std::max(0.0, pressure_drop / rated_pressure));
    const double flow = fuel_density * rated_flow * std::max(share, least_share_of_flow);
    return fuel_flow / (cycles(engine_speed) * count * flow) + dead_time;
}

double injector_duty(double pulse_width, double engine_speed) noexcept {
    return pulse_width * cycles(engine_speed);
}

Injection Injector::inject(double fuel_flow, double engine_speed, double fuel_density,
                           double manifold_pressure, double ambient_pressure,
                           double usual_count) const noexcept {
    Injection injection;
    injection.fuel_flow = fuel_flow;
    injection.pressure_drop =
        referenced ? rail_pressure : rail_pressure + ambient_pressure - manifold_pressure;
    injection.pulse_width = injector_pulse_width(
        fuel_flow, engine_speed, rated_flow, rated_pressure, injection.pressure_drop, fuel_density,
        dead_time, count.value_or(usual_count));
    injection.duty = injector_duty(injection.pulse_width, engine_speed);
    injection.over_rated = injection.duty > rated_duty;
    return injection;
}

std::span<const fields::Row> Injector::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("rated_flow", "q_r", at<&Injector::rated_flow>, volume_flow("cm3/min"), {20, 5000},
                 "Flow of one injector held open, at rated_pressure"),
        with_default("rated_pressure", "dp_r", at<&Injector::rated_pressure>,
                     pressure_difference("kPa"), {50, 1000}, 5,
                     "Pressure drop at which the flow is rated", "common practice"),
        with_default("rail_pressure", "p_r", at<&Injector::rail_pressure>, gauge_pressure("kPa"),
                     {50, 1000}, 10,
                     "Fuel pressure above the weather, or above the manifold if referenced",
                     "common practice"),
        flag("referenced", at<&Injector::referenced>,
             "Whether the regulator holds the rail against the manifold; fixed against the "
             "weather, boost takes from the drop",
             "common practice"),
        with_default("dead_time", "t_d", at<&Injector::dead_time>, time("ms"), {0, 3}, 0.3,
                     "Time from the electrical pulse to the open injector",
                     "no source; at a charged battery's voltage"),
        with_default("rated_duty", "u_r", at<&Injector::rated_duty>, percent(), {30, 100}, 0,
                     "Duty above which a caution is given", "common practice, 80 to 85 %")
            .watching("/injector/duty", "injectors held open"),
        whole(optional("count", "n_j", at<&Injector::count>, number(), {1, 24},
                       "Injectors that share the fuel; one a cylinder where not stated")),
    };
    return table;
}

}  // namespace windwall::engine
