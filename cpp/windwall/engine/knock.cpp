#include "windwall/engine/knock.hpp"

#include "windwall/engine/usual.hpp"
#include "windwall/media/liquids.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double thousand_rpm = 1000 * std::numbers::pi / 30;

// Octane numbers per logarithm of the manifold pressure: 3 per 10 kPa at 1 bar, the least that Russ
// found; where one change of air or mixture was measured at several pressures it allowed one ratio
// of them, and never one difference (NACA E-244).
constexpr double per_log_pressure = 30;
constexpr double least_pressure = 1;  // Pa

/// Octane numbers by which a pressure lies above 1 Pa.
double pressure_requirement(double pressure) noexcept {
    return per_log_pressure * std::log(std::max(pressure, least_pressure));
}

/// Octane numbers that water vapour is worth, its share in kg per kg of dry air: 0.3 per g/kg about
/// the humidity of the weather, half of what its first slope would make at 40 g/kg.
double damping(double humidity_ratio) noexcept {
    constexpr double first_slope = 390, half_at = 0.040;
    return first_slope * humidity_ratio / (1 + humidity_ratio / half_at);
}

/// Octane numbers by which a mixture knocks less than the worst one, which has 14 kg of air per
/// kg of petrol, or as much for another fuel.
double mixture_relief(double lambda) noexcept {
    const double air_fuel_ratio =
        lambda * media::liquid(media::Vapour::petrol).stoichiometric_ratio;
    return 2 * std::abs(air_fuel_ratio - 14.0);
}

}  // namespace

double octane_requirement_rise(const KnockState& here, const KnockState& anchor) noexcept {
    double rise = 5 * (here.compression_ratio - anchor.compression_ratio);
    rise += pressure_requirement(here.manifold_pressure) -
            pressure_requirement(anchor.manifold_pressure);
    rise += (here.charge_temperature - anchor.charge_temperature) / 7;
    rise += (here.head_temperature - anchor.head_temperature) / 10;
    rise -= (here.retard - anchor.retard) / degree;
    rise += (here.exhaust_pressure - anchor.exhaust_pressure) / 30e3;
    rise -= mixture_relief(here.lambda) - mixture_relief(anchor.lambda);
    rise -= (here.engine_speed - anchor.engine_speed) / thousand_rpm;
    rise -= damping(here.humidity_ratio) - damping(anchor.humidity_ratio);
    return rise;
}

double KnockAnchor::requirement(const KnockState& state) const noexcept {
    const KnockState anchor{compression_ratio,
                            engine_speed,
                            manifold_pressure,
                            charge_temperature,
                            head_temperature,
                            retard,
                            lambda,
                            humidity_ratio,
                            exhaust_pressure};
    return octane_number + octane_requirement_rise(state, anchor);
}

double KnockAnchor::spread() const noexcept {
    if (known_to) return *known_to;
    const KnockAnchor table;
    const bool heard = octane_number != table.octane_number ||
                       compression_ratio != table.compression_ratio ||
                       manifold_pressure != table.manifold_pressure;
    return heard ? 5 : 10;
}

double knock_probability(double margin, double spread) noexcept {
    return 0.5 * std::erfc(margin / (spread * std::numbers::sqrt2));
}

std::span<const fields::Row> KnockAnchor::rows() {
    using namespace fields;
    static constexpr std::string_view unstated = "the table names no such condition; estimate";
    static constexpr Row table[] = {
        with_default(
            "octane_number", "ON_0", at<&KnockAnchor::octane_number>, number(), {40, 140}, 10,
            "Octane index that just kept this engine from knock at the anchor; heard at this "
            "point it is known to 5",
            "textbook table for full throttle, engines of 1960 to 1990, compression ratio 8")
            .chosen_by("design"),
        with_default(
            "compression_ratio", "r_0", at<&KnockAnchor::compression_ratio>, number(), {4, 18}, 0.1,
            "Compression ratio at the anchor",
            "entry of that textbook table; state your own engine's with your own octane number"),
        with_default("engine_speed", "N_0", at<&KnockAnchor::engine_speed>, angular_speed("rpm"),
                     {300, 20000}, 300, "Engine speed at the anchor", unstated),
        with_default("manifold_pressure", "p_0", at<&KnockAnchor::manifold_pressure>,
                     absolute_pressure("kPa"), {20, 400}, 2, "Manifold pressure at the anchor",
                     "derived: full throttle near sea level"),
        with_default("charge_temperature", "T_0", at<&KnockAnchor::charge_temperature>,
                     temperature("degC"), {-40, 250}, 5, "Charge temperature at the anchor",
                     unstated),
        with_default("head_temperature", "T_h0", at<&KnockAnchor::head_temperature>,
                     temperature("degC"), {20, 350}, 10, "Head temperature at the anchor", unstated)
            .chosen_by("design"),
        with_default("retard", "d_0", at<&KnockAnchor::retard>, angle("deg"), {-20, 40}, 2,
                     "Spark at the anchor, crank angle after that of best torque", unstated),
        with_default("lambda", "l_0", at<&KnockAnchor::lambda>, number(), {0.65, 1.4}, 0.02,
                     "Air over what the fuel needs at the anchor",
                     "no source, for the table names none; the mixture that knocks most"),
        with_default("humidity_ratio", "w_0", at<&KnockAnchor::humidity_ratio>, number(), {0, 0.1},
                     0.004, "Water vapour per dry air by mass at the anchor",
                     "no source; air of 25 degC and 36 % relative humidity"),
        with_default("exhaust_pressure", "p_e0", at<&KnockAnchor::exhaust_pressure>,
                     absolute_pressure("kPa"), {50, 300}, 5, "Mean exhaust pressure at the anchor",
                     unstated),
    };
    return table;
}

}  // namespace windwall::engine
