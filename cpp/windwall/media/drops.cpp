#include "windwall/media/drops.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/media/vapour_pressure.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/numerics/smooth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::media {
namespace {

using Shares = std::array<double, 4>;

// Of the vapours in air at 298.15 K and 101 325 Pa, m2/s, growing with T^1.75/p (Fuller). From
// memory, to be confirmed; petrol as iso-octane.
constexpr Shares diffusivity{2.5e-5, 1.6e-5, 1.2e-5, 0.6e-5};
constexpr Shares tension{0.072, 0.0222, 0.0219, 0.0216};
constexpr Shares viscosity{0.89e-3, 0.54e-3, 1.07e-3, 0.5e-3};

/// Of air, W/(m K), U.S. Standard Atmosphere 1976, eq. 53.
double air_conductivity(double T) {
    return 2.64638e-3 * T * std::sqrt(T) / (T + 245.4 * std::exp(-12 * std::numbers::ln10 / T));
}

/// The liquid as one substance: mole shares and what it fills the gas with at its surface.
struct Surface {
    Shares moles{};
    double water_alcohol{};
    Activity held{1, 1};

    explicit Surface(const Stream& stream) {
        for (std::size_t i = 0; i < moles.size(); ++i)
            moles[i] = stream.liquid[i] / liquids[i].molar_mass;
        water_alcohol = moles[0] + moles[1] + moles[2];
        if (water_alcohol > 0)
            held = activity(alcohol_in_water(moles[1], moles[2]),
                            (moles[1] + moles[2]) / water_alcohol);
    }
    double pressure(std::size_t i, double T) const {
        if (!(moles[i] > 0)) return 0;
        const Vapour kind = all_vapours[i];
        if (kind == Vapour::petrol) return petrol_pressure(T, 0.5);
        return (i == 0 ? held.water : held.alcohol) * moles[i] / water_alcohol *
               vapour_pressure(kind, T);
    }
};

/// Mass shares in the gas at the surface and far from it, and means over what evaporates.
struct Film {
    double B{};            // Spalding's mass transfer number
    double latent_heat{};  // J/kg
    double diffusivity{};  // m2/s at 298.15 K and 101 325 Pa
    double share{};        // of vapour at the surface, by mass
    double far{};
};

Film film_at(const Surface& surface, const Stream& stream, double T) {
    Film film;
    Shares mass{};
    double moles = 0, vapours = 0;
    for (std::size_t i = 0; i < mass.size(); ++i) {
        const double share = std::min(surface.pressure(i, T) / stream.pressure, 0.24);
        mass[i] = share * liquids[i].molar_mass;
        moles += share;
        vapours += mass[i];
        if (stream.liquid[i] > 0) film.far += stream.vapour[i];
        const double latent = liquids[i].latent_heat + (1.6e3 - liquids[i].heat_capacity) *
                                                           (T - constants::reference_temperature);
        film.latent_heat += mass[i] * latent;
        film.diffusivity += mass[i] * diffusivity[i];
    }
    film.far /= 1 + stream.vapour_share();
    film.share = vapours / (vapours + (1 - moles) * constants::molar_mass_air);
    film.B = (film.share - film.far) / (1 - film.share);
    film.latent_heat /= vapours;
    film.diffusivity /= vapours;
    return film;
}

struct Transfer {
    double lewis, density_diffusivity;
};

Transfer transfer(const Film& film, const Stream& stream, double T) {
    const double mean = T + (stream.temperature - T) / 3;
    const double vapour = film.share + (film.far - film.share) / 3;
    const double D = film.diffusivity * std::pow(mean / constants::reference_temperature, 1.75) *
                     constants::isa_pressure / stream.pressure;
    const double density = stream.pressure / (constants::gas_constant_air * mean);
    const double cp = (1 - vapour) * 1006 + vapour * 1600;
    return {air_conductivity(mean) / (density * cp * D), density * D};
}

/// Falls with the drop's temperature: the heat that comes less the heat that evaporation takes.
double surplus(const Film& film, const Transfer& moves, const Stream& stream, double T) {
    const double heat = 1006 * (stream.temperature - T) / film.latent_heat;
    return moves.lewis * std::log1p(std::max(heat, -0.99)) - std::log1p(std::max(film.B, -0.99));
}

/// Where the surplus vanishes.
double drop_temperature(const Surface& surface, const Stream& stream) {
    const auto at = [&](double T) {
        const Film film = film_at(surface, stream, T);
        return surplus(film, transfer(film, stream, T), stream, T);
    };
    const double low = std::min(200.0, stream.temperature - 1);
    const double high = std::max(stream.temperature, 201.0);
    const double at_high = at(high);
    if (at_high > 0) return high;  // condensing: the drop is no colder than the gas
    return numerics::find_root(at, {low, high, at(low), at_high, 0, true}, {0, 1e-12, 60}).x;
}

}  // namespace

double surface_tension(Vapour liquid) noexcept { return tension[index(liquid)]; }
double liquid_viscosity(Vapour liquid) noexcept { return viscosity[index(liquid)]; }

double liquid_density(const Stream& stream) noexcept {
    const double volume = volume_of(stream.liquid);
    return volume > 0 ? stream.liquid_share() / volume : liquid(Vapour::water).density;
}

DropRate drop_rate(const Stream& stream) noexcept {
    if (!(stream.liquid_share() > 0)) return {stream.temperature, 0};
    const Surface surface(stream);
    const double T = drop_temperature(surface, stream);
    const Film film = film_at(surface, stream, T);
    const Transfer moves = transfer(film, stream, T);
    const double B = std::max(film.B, 0.0);
    return {T, 8 * moves.density_diffusivity / liquid_density(stream) * std::log1p(B)};
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
