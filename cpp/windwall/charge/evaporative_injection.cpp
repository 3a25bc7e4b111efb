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

std::array<double, 4> EvaporativeInjection::blend() const noexcept {
    const std::array<double, 4> shares{std::max(1 - methanol - ethanol, 0.0), methanol, ethanol, 0};
    return blend_by == BlendBy::volume ? media::shares_by_mass(shares) : media::normalised(shares);
}

double EvaporativeInjection::blend_density() const noexcept {
    return 1 / media::volume_of(blend());
}

std::optional<double> EvaporativeInjection::above_start(
    const Surroundings& surroundings) const noexcept {
    if (!switched()) return std::nullopt;
    const double starts =
        starts_at ? surroundings.ambient_pressure + *starts_at : *starts_at_absolute;
    return surroundings.sensed_pressure - starts;
}

double EvaporativeInjection::asked(const media::Stream& in, const Surroundings& surroundings,
                                   double eased) const noexcept {
    const auto above = above_start(surroundings);
    const double by_pressure = above ? numerics::smooth_step((*above + eased) / full_after) : 1;
    return by_pressure * trigger.share(in, surroundings);
}

double EvaporativeInjection::open_share() const noexcept {
    return duty ? valve_open_share(*duty, valve_period, dead_time) : 1;
}

double EvaporativeInjection::cycle_spread(double engine_speed, double mixing_time) const noexcept {
    return duty ? charge::cycle_spread(valve_period, open_share(), engine_speed, mixing_time) : 0;
}

Spray EvaporativeInjection::spray(const media::Stream& in,
                                  const Surroundings& surroundings) const noexcept {
    const Held& held = surroundings.held;
    const double gauge = in.pressure - surroundings.ambient_pressure;
    Spray made;
    made.above_start = above_start(surroundings);
    made.running = held.running ? *held.running : asked(in, surroundings);
    made.pressure_difference = boost_referenced ? pump_pressure : pump_pressure - gauge;
    const double pumped = made.running * open_share() * mass_flow(*this, made.pressure_difference);
    // The tank stands in the ambient air: vacuum at the nozzle draws from it.
    const double drawn = check_valve ? 0 : (1 - made.running) * mass_flow(*this, -gauge);
    if (held.line_filled.value_or(1) < 1) {
        made.filling = pumped + drawn;
    } else {
        made.siphoned = drawn;
        made.flow = pumped + drawn;
    }
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

}  // namespace windwall::charge
