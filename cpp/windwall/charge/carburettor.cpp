#include "windwall/charge/carburettor.hpp"

#include "windwall/charge/pressure_loss.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/numerics/smooth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

constexpr double idle_depression = 50;  // Pa, below which idle jets feed, not the venturi
constexpr double richest = 2;

}  // namespace

double jet_metering(double depression, double bowl_above_inlet) noexcept {
    const double size = std::abs(depression);
    const double ratio = 1 + bowl_above_inlet / std::hypot(size, idle_depression);
    if (!(ratio > 0)) return 0;
    // Up to its bound without a corner.
    const double drawn = std::sqrt(ratio);
    return drawn <= 1 ? drawn : 1 + (richest - 1) * std::tanh((drawn - 1) / (richest - 1));
}

double Carburettor::depression(const media::Stream& in) const noexcept {
    const double area = discharge_coefficient * std::numbers::pi / 4 * venturi * venturi;
    const double flow = in.gas_flow();
    return flow * std::abs(flow) / (2 * in.density() * area * area);
}

double Carburettor::metering(const media::Stream& in,
                             const Surroundings& surroundings) const noexcept {
    if (bowl_referenced) return 1;
    return jet_metering(depression(in), surroundings.ambient_pressure - in.pressure);
}

media::Stream Carburettor::outlet(const media::Stream& in,
                                  const Surroundings& surroundings) const noexcept {
    media::Stream out = in;
    out.pressure = pressure_after(in.pressure, unrecovered * depression(in));
    if (!(in.dry_air > 0)) return out;
    std::array<double, 4> fuel = surroundings.fuel_demand;
    const double drawn = metering(in, surroundings);
    double all = 0;
    for (double& each : fuel)
        all += each *= drawn;
    if (!(all > 0)) return out;
    const double film = out.film_share * out.liquid_share() + on_wall * all;
    out = media::with_liquid(out, fuel, surroundings.ambient_temperature, drop_diameter);
    out.film_share = std::min(film / out.liquid_share(), 1.0);
    const media::Stream ceiling = media::adiabatic_equilibrium(out);
    const double most = out.liquid_share() - ceiling.liquid_share();
    if (!(most > 0 && evaporated > 0)) return out;
    return media::towards(out, ceiling, numerics::saturated(evaporated * all / most),
                          media::enthalpy_per_dry_air(out));
}

std::span<const fields::Row> Carburettor::rows() {
    using namespace fields;
    using C = Carburettor;
    static constexpr Row table[] = {
        required("venturi", "d_v", at<&C::venturi>, length("mm"), {6, 80},
                 "Narrowest bore the air passes"),
        with_default(
            "discharge_coefficient", "C_d", at<&C::discharge_coefficient>, number(), {0.5, 1}, 0.05,
            "Area of the air's jet over the venturi's",
            "0.80 to 0.85 in exercises of textbooks (Mathur and Sharma, Internal Combustion "
            "Engine, chapter 11)"),
        with_default("unrecovered", "k_v", at<&C::unrecovered>, number(), {0, 1}, 0.1,
                     "Share of the depression that the air does not regain",
                     "0.10 to 0.30 for venturis with wide cones behind the throat, handbook of "
                     "calculations printed at GlobalSpec, permanent pressure loss"),
        flag(
            "bowl_referenced", at<&C::bowl_referenced>,
            "The float bowl feels the pressure of the air that enters the carburettor; if not, the "
            "ambient air, and boost cuts the fuel",
            "common practice: vented into the inlet"),
        with_default("evaporated", "x_f", at<&C::evaporated>, percent(), {0, 100}, 20,
                     "Share of the fuel that evaporates at once, at most what equilibrium allows",
                     "no source"),
        with_default("on_wall", "x_w", at<&C::on_wall>, percent(), {0, 100}, 25,
                     "Share of the fuel that runs along the wall as liquid and evaporates on the "
                     "intake valve",
                     "no source"),
        with_default("drop_diameter", "d_32", at<&C::drop_diameter>, length("mm"), {0.01, 1}, 0.05,
                     "Sauter mean diameter of the fuel's drops", "no source"),
        with_default("idle_richer", "x_i", at<&C::idle_richer>, percent(), {-20, 60}, 6,
                     "Fuel that the idle jet gives beyond what lambda asks for", "no source"),
    };
    return table;
}

}  // namespace windwall::charge
