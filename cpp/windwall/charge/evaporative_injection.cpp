#include "windwall/charge/evaporative_injection.hpp"

#include "windwall/media/drops.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/numerics/smooth.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::charge {
namespace {

using media::Vapour;

constexpr double most_liquid = 1;  // kg per kg of dry air, where the engine hardly breathes
constexpr double soft = 100;       // Pa, below which a difference gives less than its root

/// Root without its steep start, so that a solver sees no corner; 0 below 0.
double soft_root(double x) { return x > 0 ? x / std::pow(x * x + soft * soft, 0.25) : 0; }

/// Of the blend, by mass.
template <class Property>
double mean(const std::array<double, 4>& blend, Property&& property) {
    double sum = 0;
    for (const Vapour kind : media::all_vapours)
        sum += blend[media::index(kind)] * property(kind);
    return sum;
}

/// What its switch reads above where the pump starts; nothing where it always runs.
std::optional<double> above_start(const EvaporativeInjection& part,
                                  const Surroundings& surroundings) {
    if (!part.switched()) return std::nullopt;
    const double starts =
        part.starts_at ? surroundings.ambient_pressure + *part.starts_at : *part.starts_at_absolute;
    return surroundings.sensed_pressure - starts;
}

double mass_flow(const EvaporativeInjection& part, double difference) {
    const double water = media::liquid(Vapour::water).density;
    const double rated = part.rated_flow / soft_root(part.rated_pressure);
    return rated * soft_root(difference) * std::sqrt(water * part.blend_density());
}

double drop_size(const EvaporativeInjection& part, const media::Stream& in, double flow,
                 double difference) {
    const auto blend = part.blend();
    const double made = part.drop_diameter
                            ? *part.drop_diameter
                            : media::sauter_diameter(mean(blend, media::surface_tension),
                                                     mean(blend, media::liquid_viscosity), flow,
                                                     difference, in.density());
    return part.drop_size_factor * made;
}

}  // namespace

double nozzle_flow(double rated_flow, double pressure_difference, double rated_pressure) noexcept {
    return rated_flow * std::sqrt(std::max(pressure_difference, 0.0) / rated_pressure);
}

double valve_open_share(double duty, double period, double dead_time) noexcept {
    return std::clamp(duty - dead_time / period, 0.0, 1.0);
}

std::array<double, 4> EvaporativeInjection::blend() const noexcept {
    const std::array<double, 4> shares{std::max(1 - methanol - ethanol, 0.0), methanol, ethanol, 0};
    return blend_by == BlendBy::volume ? media::shares_by_mass(shares) : media::normalised(shares);
}

double EvaporativeInjection::blend_density() const noexcept {
    return 1 / media::volume_of(blend());
}

Spray EvaporativeInjection::spray(const media::Stream& in,
                                  const Surroundings& surroundings) const noexcept {
    const double gauge = in.pressure - surroundings.ambient_pressure;
    Spray made;
    made.above_start = above_start(*this, surroundings);
    made.running = made.above_start ? numerics::smooth_step(*made.above_start / full_after) : 1;
    made.pressure_difference = boost_referenced ? pump_pressure : pump_pressure - gauge;
    const double open = duty ? valve_open_share(*duty, valve_period, dead_time) : 1;
    const double pumped = made.running * open * mass_flow(*this, made.pressure_difference);
    // The tank stands in the ambient air: vacuum at the nozzle draws from it.
    made.siphoned = check_valve ? 0 : (1 - made.running) * mass_flow(*this, -gauge);
    made.flow = pumped + made.siphoned;
    const double difference = std::max(made.pressure_difference, 1e3);
    made.drop_diameter = made.flow > 0 ? drop_size(*this, in, made.flow, difference) : 0;
    made.atomises = made.pressure_difference >= least_pressure;
    return made;
}

media::Stream EvaporativeInjection::outlet(const media::Stream& in,
                                           const Surroundings& surroundings) const noexcept {
    if (!(in.dry_air > 0)) return in;
    const Spray made = spray(in, surroundings);
    if (!(made.flow > 0)) return in;
    const double added = most_liquid * numerics::saturated(made.flow / in.dry_air / most_liquid);
    std::array<double, 4> liquid = blend();
    for (double& each : liquid)
        each *= added;
    const double film = in.film_share * in.liquid_share() + wall_share * added;
    media::Stream out = media::with_liquid(
        in, liquid, liquid_temperature.value_or(surroundings.ambient_temperature),
        made.drop_diameter);
    out.film_share = std::min(film / out.liquid_share(), 1.0);
    return out;
}

std::optional<fields::Violation> EvaporativeInjection::check() const {
    if (methanol + ethanol > 1 + 1e-12)
        return fields::Violation{"ethanol", "methanol and ethanol are more than the whole blend"};
    if (starts_at && starts_at_absolute)
        return fields::Violation{"starts_at_absolute",
                                 "the switch reads from the local air (starts_at) or from vacuum "
                                 "(starts_at_absolute), not both"};
    return std::nullopt;
}

std::span<const fields::Row> EvaporativeInjection::rows() {
    using namespace fields;
    using E = EvaporativeInjection;
    static constexpr Row table[] = {
        choice("blend_by", at<&E::blend_by>,
               "Whether the shares of the blend are by mass or by volume", {}, Need::required),
        required("methanol", "x_m", at<&E::methanol>, percent(), {0, 100},
                 "Methanol in the blend; what is neither methanol nor ethanol is water"),
        with_default("ethanol", "x_e", at<&E::ethanol>, percent(), {0, 100}, 0,
                     "Ethanol in the blend", "none, unless stated"),
        required("rated_flow", "Q_0", at<&E::rated_flow>, volume_flow("cm3/min"), {1, 20000},
                 "Flow of water through all nozzles at this place at the rated pressure"),
        with_default("rated_pressure", "dp_0", at<&E::rated_pressure>, pressure_difference("bar"),
                     {0.5, 200}, 0.2, "Pressure across the nozzle at which its flow is rated",
                     "common practice"),
        required("pump_pressure", "p_p", at<&E::pump_pressure>, gauge_pressure("bar"), {0.1, 200},
                 "Pressure of the pump above the ambient air, or above the charge if referenced"),
        flag(
            "boost_referenced", at<&E::boost_referenced>,
            "The pump's pressure is kept above the charge at the nozzle, not above the ambient air",
            "common practice: a plain pump with a pressure switch"),
        optional(
            "starts_at", "p_s", at<&E::starts_at>, gauge_pressure("kPa"), {-90, 300},
            "Boost below which the pump rests, read in the manifold or at `starts_where`; with "
            "neither this nor `starts_at_absolute` it always runs"),
        optional("starts_at_absolute", "p_sa", at<&E::starts_at_absolute>, absolute_pressure("kPa"),
                 {5, 450}, "The same of a switch that counts from vacuum"),
        text("starts_where", at<&E::starts_where>,
             "Id of the part of the charge path behind which the switch reads; when not given, the "
             "manifold"),
        with_default("full_after", "dp_s", at<&E::full_after>, pressure_difference("kPa"),
                     {0.5, 200}, 2, "Further boost over which the pump comes to its pressure",
                     "common practice"),
        optional(
            "duty", "D", at<&E::duty>, percent(), {0, 100},
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
    return table;
}

}  // namespace windwall::charge
