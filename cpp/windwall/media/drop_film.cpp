#include "windwall/media/drop_film.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/drops.hpp"
#include "windwall/media/liquids.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::media {
namespace {

using numerics::Point;

// Of the vapours in air at 298.15 K and 101 325 Pa, m2/s, growing with T^1.75/p: after
// Fuller, Schettler and Giddings. Kinetic theory has 2.2e-5 and 1.5e-5 for the first two (Cantera);
// petrol as iso-octane.
constexpr std::array<double, 4> diffusivity{2.5e-5, 1.6e-5, 1.2e-5, 0.6e-5};
constexpr double of_air = 1006, of_vapour = 1600;  // heat capacities, J/(kg K)
constexpr double most_at_surface = 0.24;           // mole share of each vapour
constexpr double coldest = 200;                    // K
constexpr double still = 2.0 / 3;                  // the drop's part in the film's mean state

/// Of air, W/(m K), U.S. Standard Atmosphere 1976, eq. 53; the slope is that of its logarithm.
Point air_conductivity(double T) {
    constexpr double exponent = 12 * std::numbers::ln10;
    const double bent = 245.4 * std::exp(-exponent / T);
    return {2.64638e-3 * T * std::sqrt(T) / (T + bent),
            1.5 / T - (1 + bent * exponent / (T * T)) / (T + bent)};
}

void add(Point& sum, double factor, const Point& other) {
    sum.value += factor * other.value;
    sum.slope += factor * other.slope;
}

Point quotient(const Point& a, const Point& b) {
    const double value = a.value / b.value;
    return {value, (a.slope - value * b.slope) / b.value};
}

}  // namespace

double vapour_diffusivity(Vapour liquid) noexcept { return diffusivity[index(liquid)]; }

DropFilm::DropFilm(const Stream& stream) noexcept
    : pressure_(stream.pressure), gas_temperature_(stream.temperature) {
    std::array<double, 4> moles{};
    for (std::size_t i = 0; i < moles.size(); ++i) {
        moles[i] = std::max(stream.liquid[i], 0.0) / liquids[i].molar_mass;
        if (moles[i] > 0) far_ += stream.vapour[i] / (1 + stream.vapour_share());
    }
    if (moles[3] > 0) held_back_[3] = std::exp(-petrol_fall / 2);  // half of it has evaporated
    const double alcohols = moles[1] + moles[2], mixture = moles[0] + alcohols;
    if (!(mixture > 0)) return;
    const Activity held = activity(alcohol_in_water(moles[1], moles[2]), alcohols / mixture);
    for (std::size_t i = 0; i < 3; ++i)
        held_back_[i] = (i == 0 ? held.water : held.alcohol) * moles[i] / mixture;
}

Point DropFilm::mole_share(std::size_t substance, double T) const noexcept {
    const auto [pressure, growth] = saturation(all_vapours[substance], T);
    const double share = held_back_[substance] * pressure / pressure_;
    if (!(share < most_at_surface)) return {most_at_surface, 0};
    return {share, share * growth};
}

DropFilm::Surface DropFilm::surface(double T) const noexcept {
    Surface all;
    Point vapours, air{constants::molar_mass_air, 0};
    for (std::size_t i = 0; i < held_back_.size(); ++i) {
        if (!(held_back_[i] > 0)) continue;
        const Liquid& pure = liquids[i];
        const Point moles = mole_share(i, T);
        const double bend = of_vapour - pure.heat_capacity;
        const double latent = pure.latent_heat + bend * (T - constants::reference_temperature);
        add(vapours, pure.molar_mass, moles);
        add(air, -constants::molar_mass_air, moles);
        add(all.latent_heat, pure.molar_mass * latent, moles);
        all.latent_heat.slope += pure.molar_mass * moles.value * bend;
        add(all.diffusivity, pure.molar_mass * diffusivity[i], moles);
    }
    add(air, 1, vapours);
    all.share = quotient(vapours, air);
    all.latent_heat = quotient(all.latent_heat, vapours);
    all.diffusivity = quotient(all.diffusivity, vapours);
    all.B = (all.share.value - far_) / (1 - all.share.value);
    return all;
}

DropFilm::Transfer DropFilm::transfer(const Surface& at, double T) const noexcept {
    const double mean = still * T + (1 - still) * gas_temperature_;
    const double vapour = still * at.share.value + (1 - still) * far_;
    const double warmth = mean / constants::reference_temperature;
    const double D = at.diffusivity.value * warmth * std::sqrt(warmth * std::sqrt(warmth)) *
                     constants::isa_pressure / pressure_;
    const double density = pressure_ / (constants::gas_constant_air * mean);
    const double cp = (1 - vapour) * of_air + vapour * of_vapour;
    const auto [k, growth] = air_conductivity(mean);
    const double of_mean = growth - 0.75 / mean - (of_vapour - of_air) * at.share.slope / cp;
    return {{k / (density * cp * D), still * of_mean - at.diffusivity.slope / at.diffusivity.value},
            density * D};
}

Point DropFilm::excess_force(double T) const noexcept {
    const Surface at = surface(T);
    if (!(at.B > 0)) return {1, 0};
    const double L = at.latent_heat.value, heat = of_air * (gas_temperature_ - T) / L;
    if (!(heat > 0)) return {-1, 0};
    const auto [lewis, growth] = transfer(at, T).lewis;
    const double taken = std::log1p(at.B), brought = std::log1p(heat);
    const double cooling = (of_air + heat * at.latent_heat.slope) / (L * (1 + heat));
    const double drying = at.share.slope / (1 - at.share.value);
    return {std::log(lewis * brought / taken), growth - cooling / brought - drying / taken};
}

double DropFilm::balanced() const noexcept {
    const double high = gas_temperature_, low = std::min(coldest, high - 1);
    if (!(surface(high).B > 0)) return high;  // vapour condenses: the drop is no colder
    return numerics::falling_root([this](double T) { return excess_force(T); }, low, high,
                                  high - 0.3 * (high - low), 1e-9);
}

double DropFilm::evaporation(double T) const noexcept {
    const Surface at = surface(T);
    return transfer(at, T).density_diffusivity * std::log1p(std::max(at.B, 0.0));
}

}  // namespace windwall::media
