#include "windwall/media/drops.hpp"

#include "windwall/media/drop_film.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/numerics/smooth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::media {
namespace {

using Shares = std::array<double, 4>;

constexpr Shares tension{0.072, 0.0222, 0.0219, 0.0216};
constexpr Shares viscosity{0.89e-3, 0.54e-3, 1.07e-3, 0.5e-3};

}  // namespace

double surface_tension(Vapour liquid) noexcept { return tension[index(liquid)]; }
double liquid_viscosity(Vapour liquid) noexcept { return viscosity[index(liquid)]; }

double liquid_density(const Stream& stream) noexcept {
    const double volume = volume_of(stream.liquid);
    return volume > 0 ? stream.liquid_share() / volume : liquid(Vapour::water).density;
}

DropRate drop_rate(const Stream& stream) noexcept {
    if (!(stream.liquid_share() > 0)) return {stream.temperature, 0};
    const DropFilm film(stream);
    const double T = film.balanced();
    return {T, 8 / liquid_density(stream) * film.evaporation(T)};
}

double evaporated_share(double evaporation_constant, double time, double diameter) noexcept {
    if (!(diameter > 0)) return 0;
    const double left = 1 - evaporation_constant * time / (diameter * diameter);
    return left > 0 ? 1 - left * std::sqrt(left) : 1;
}

double sauter_diameter(double tension_, double viscosity_, double flow, double pressure_difference,
                       double gas_density) noexcept {
    if (!(flow > 0 && pressure_difference > 0 && gas_density > 0)) return 0;
    return 2.25 * std::pow(tension_ * viscosity_ * flow / gas_density, 0.25) /
           std::sqrt(pressure_difference);
}

double stokes_number(double liquid_density, double drop_diameter, double velocity,
                     double gas_viscosity, double bore) noexcept {
    return liquid_density * drop_diameter * drop_diameter * std::abs(velocity) /
           (18 * gas_viscosity * bore);
}

double caught_in_bend(double stokes, double angle) noexcept {
    return -std::expm1(-std::numbers::ln10 * 0.963 * 2 * stokes * angle / (std::numbers::pi / 2));
}

Stream evaporate(const Stream& stream, double time) noexcept {
    const double all = stream.liquid_share();
    const double flying = all * (1 - stream.film_share);
    if (!(flying > 0 && time > 0 && stream.drop_diameter > 0)) return stream;
    const Stream ceiling = adiabatic_equilibrium(stream);
    const double most = all - ceiling.liquid_share();
    if (!(most > 0)) return stream;
    const double constant = drop_rate(stream).evaporation_constant;
    const double rate = flying * evaporated_share(constant, time, stream.drop_diameter);
    const double share = numerics::saturated(rate / most);
    Stream after = towards(stream, ceiling, share, enthalpy_per_dry_air(stream));
    // Only drops shrink; the film stays what it was, as far as there is liquid for it.
    const double left = after.liquid_share(), film = all * stream.film_share;
    after.film_share = left > 0 ? std::min(film / left, 1.0) : 0;
    after.drop_diameter = stream.drop_diameter * std::cbrt(std::max(left - film, 0.0) / flying);
    return after;
}

}  // namespace windwall::media
