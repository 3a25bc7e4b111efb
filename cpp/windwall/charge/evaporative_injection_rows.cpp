// The rows of a nozzle.
#include "windwall/charge/evaporative_injection.hpp"

namespace windwall::charge {

namespace {

using namespace fields;
using E = EvaporativeInjection;

constexpr Row table[] = {
    choice("blend_by", at<&E::blend_by>, "Whether the shares of the blend are by mass or by volume",
           {}, Need::required),
    required("methanol", "x_m", at<&E::methanol>, percent(), {0, 100},
             "Methanol in the blend; what is neither methanol nor ethanol is water"),
    with_default("ethanol", "x_e", at<&E::ethanol>, percent(), {0, 100}, 0, "Ethanol in the blend",
                 "none, unless stated"),
    required("rated_flow", "Q_0", at<&E::rated_flow>, volume_flow("cm3/min"), {1, 20000},
             "Flow of water through all nozzles at this place at the rated pressure"),
    with_default("rated_pressure", "dp_0", at<&E::rated_pressure>, pressure_difference("bar"),
                 {0.5, 200}, 0.2, "Pressure across the nozzle at which its flow is rated",
                 "common practice"),
    required("pump_pressure", "p_p", at<&E::pump_pressure>, gauge_pressure("bar"), {0.1, 200},
             "Pressure of the pump above the ambient air, or above the charge if referenced"),
    flag("boost_referenced", at<&E::boost_referenced>,
         "The pump's pressure is kept above the charge at the nozzle, not above the ambient air",
         "common practice: a plain pump with a pressure switch"),
    optional("starts_at", "p_s", at<&E::starts_at>, gauge_pressure("kPa"), {-90, 300},
             "Boost below which the pump rests, read in the manifold or at `starts_where`; with "
             "neither this nor `starts_at_absolute` it always runs"),
    optional("starts_at_absolute", "p_sa", at<&E::starts_at_absolute>, absolute_pressure("kPa"),
             {5, 450}, "The same of a switch that counts from vacuum"),
    text("starts_where", at<&E::starts_where>,
         "Id of the part of the charge path behind which the switch reads; when not given, the "
         "manifold"),
    with_default("full_after", "dp_s", at<&E::full_after>, pressure_difference("kPa"), {0.5, 200},
                 2, "Further boost over which the pump comes to its pressure", "common practice"),
    group("trigger", at<&E::trigger>, "What else must be met before the pump runs"),
    with_default("hysteresis", "dp_h", at<&E::hysteresis>, pressure_difference("kPa"), {0, 100}, 2,
                 "Pressure by which a switch that is on stays on below where it starts",
                 "no source"),
    with_default("delay", "t_s", at<&E::delay>, fields::time("s"), {0, 10}, 0.1,
                 "Time from the switch to the pump, on the way on", "no source; a relay"),
    with_default("pump_rise_time", "tau_p", at<&E::pump_rise_time>, fields::time("s"), {0.01, 10},
                 0.2, "Time in which the pump comes to 63 % of its flow",
                 "no source; a small diaphragm pump with its line"),
    with_default("line_volume", "V_l", at<&E::line_volume>, volume("cm3"), {0.1, 1000}, 6,
                 "Of the line between pump or valve and nozzle; where nothing holds it full, "
                 "it is filled before the first liquid leaves",
                 "derived: 0.8 m of line of 4 mm bore"),
    optional("fuel_cut", "x_c", at<&E::fuel_cut>, percent(), {0, 100},
             "Share of the engine's own fuel taken off while the pump runs, in its place; when "
             "not given, the engine's own fuel is trimmed as `combustion` says"),
    optional("duty", "D", at<&E::duty>, percent(), {0, 100},
             "Share of the time a pulsed valve is told to be open; without a valve leave it out"),
    with_default("valve_period", "t_v", at<&E::valve_period>, fields::time("ms"), {2, 1000}, 10,
                 "Time from pulse to pulse of the valve", "common practice"),
    with_default("dead_time", "t_d", at<&E::dead_time>, fields::time("ms"), {0, 20}, 1,
                 "Time the valve takes to open, less the time it takes to close", "no source"),
    flag("check_valve", at<&E::check_valve>,
         "A valve in the line keeps vacuum from drawing liquid while the pump rests",
         "common practice"),
    with_default("least_pressure", "dp_l", at<&E::least_pressure>, pressure_difference("psi"),
                 {1, 3000}, 10, "Pressure across the nozzle below which it dribbles",
                 "common practice, 60 psi"),
    optional("drop_diameter", "d_32", at<&E::drop_diameter>, length("mm"), {0.002, 1},
             "Sauter mean diameter of the spray; when not given, after Lefebvre"),
    with_default("drop_size_factor", "k_d", at<&E::drop_size_factor>, number(), {0.2, 5}, 0.4,
                 "Factor on the drop's diameter: published forms differ by two",
                 "the form itself, chosen by the project"),
    with_default("wall_share", "x_w", at<&E::wall_share>, percent(), {0, 100}, 15,
                 "Share of the spray that hits the wall at once", "no source"),
    optional("liquid_temperature", "T_l", at<&E::liquid_temperature>, temperature("degC"),
             {-40, 90}, "Of the liquid in its tank; when not given, the day's"),
};

}  // namespace

std::span<const Row> EvaporativeInjection::rows() { return table; }

}  // namespace windwall::charge
