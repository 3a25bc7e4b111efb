#include "windwall/media/drops.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/falling_root.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/media/vapour_pressure.hpp"
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
constexpr double most_at_surface = 0.24;  // mole share of each vapour
constexpr Shares tension{0.072, 0.0222, 0.0219, 0.0216};
constexpr Shares viscosity{0.89e-3, 0.54e-3, 1.07e-3, 0.5e-3};

/// Of air, W/(m K), U.S. Standard Atmosphere 1976, eq. 53; the slope is that of its logarithm.
Point air_conductivity(double T) {
    constexpr double exponent = 12 * std::numbers::ln10;
    const double bent = 245.4 * std::exp(-exponent / T);
    return {2.64638e-3 * T * std::sqrt(T) / (T + bent),
            1.5 / T - (1 + bent * exponent / (T * T)) / (T + bent)};
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
    /// The slope is that of the logarithm.
    Point pressure(std::size_t i, double T) const {
        const Saturation pure = saturation(all_vapours[i], T);
        const double half_gone = std::exp(-petrol_fall / 2);
        const double held_back =
            all_vapours[i] == Vapour::petrol
                ? half_gone
                : (i == 0 ? held.water : held.alcohol) * moles[i] / water_alcohol;
        return {held_back * pure.pressure, pure.growth};
    }
};

void add(Point& sum, double factor, const Point& other) {
    sum.value += factor * other.value;
    sum.slope += factor * other.slope;
}

Point quotient(const Point& a, const Point& b) {
    const double value = a.value / b.value;
    return {value, (a.slope - value * b.slope) / b.value};
}

/// Mass shares in the gas at the surface and far from it, and means over what evaporates, each with
/// its slope over the drop's temperature.
struct Film {
    Point latent_heat;  // J/kg
    Point diffusivity;  // m2/s at 298.15 K and 101 325 Pa
    Point share;        // of vapour at the surface, by mass
    double far{};

    /// Spalding's mass transfer number.
    double B() const { return (share.value - far) / (1 - share.value); }
};

Film film_at(const Surface& surface, const Stream& stream, double T) {
    Film film;
    Point vapours, air{constants::molar_mass_air, 0};
    for (std::size_t i = 0; i < surface.moles.size(); ++i) {
        if (!(surface.moles[i] > 0)) continue;
        const auto [pressure, growth] = surface.pressure(i, T);
        const double share = std::min(pressure / stream.pressure, most_at_surface);
        const Point moles{share, share < most_at_surface ? share * growth : 0};
        const Liquid& pure = liquids[i];
        const double bend = 1.6e3 - pure.heat_capacity;
        const double latent = pure.latent_heat + bend * (T - constants::reference_temperature);
        add(vapours, pure.molar_mass, moles);
        add(air, -constants::molar_mass_air, moles);
        add(film.latent_heat, pure.molar_mass * latent, moles);
        film.latent_heat.slope += pure.molar_mass * share * bend;
        add(film.diffusivity, pure.molar_mass * diffusivity[i], moles);
        film.far += stream.vapour[i];
    }
    film.far /= 1 + stream.vapour_share();
    film.share = quotient(vapours, {vapours.value + air.value, vapours.slope + air.slope});
    film.latent_heat = quotient(film.latent_heat, vapours);
    film.diffusivity = quotient(film.diffusivity, vapours);
    return film;
}

struct Transfer {
    Point lewis;  // the slope is that of the logarithm
    double density_diffusivity;
};

Transfer transfer(const Film& film, const Stream& stream, double T) {
    constexpr double still = 2.0 / 3;  // of the drop's own temperature in the film's
    const double mean = still * T + (1 - still) * stream.temperature;
    const double vapour = still * film.share.value + (1 - still) * film.far;
    const double warmth = mean / constants::reference_temperature;
    const double D = film.diffusivity.value * warmth * std::sqrt(warmth * std::sqrt(warmth)) *
                     constants::isa_pressure / stream.pressure;
    const double density = stream.pressure / (constants::gas_constant_air * mean);
    const double cp = (1 - vapour) * 1006 + vapour * 1600;
    const auto [k, growth] = air_conductivity(mean);
    return {{k / (density * cp * D),
             still * (growth - 0.75 / mean - (1600 - 1006) * film.share.slope / cp) -
                 film.diffusivity.slope / film.diffusivity.value},
            density * D};
}

/// Falls with the drop's temperature: the logarithm of the heat that comes over the heat that
/// evaporation takes, Le ln(1 + B_T)/ln(1 + B_M). Too cold a drop has only the former.
Point surplus(const Surface& surface, const Stream& stream, double T) {
    const Film film = film_at(surface, stream, T);
    const double B = film.B(), L = film.latent_heat.value;
    if (!(B > 0)) return {1, 0};
    const double heat = 1006 * (stream.temperature - T) / L;
    if (!(heat > 0)) return {-1, 0};
    const auto [lewis, growth] = transfer(film, stream, T).lewis;
    const double taken = std::log1p(B), brought = std::log1p(heat);
    const double cooling = -(1006 + heat * film.latent_heat.slope) / (L * (1 + heat));
    return {std::log(lewis * brought / taken),
            growth + cooling / brought - film.share.slope / ((1 - film.share.value) * taken)};
}

/// Where heat and evaporation balance.
double drop_temperature(const Surface& surface, const Stream& stream) {
    const double high = stream.temperature, low = std::min(200.0, high - 1);
    if (film_at(surface, stream, high).B() <= 0) return high;  // condensing: no colder than the gas
    const double start = high - 0.3 * (high - low);
    return falling_root([&](double T) { return surplus(surface, stream, T); }, low, high, start,
                        1e-9);
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
    const double B = std::max(film.B(), 0.0);
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
