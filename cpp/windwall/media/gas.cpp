#include "windwall/media/gas.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/liquids.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

using namespace constants;

constexpr double coldest = 200.0;  // K, ends of the low NASA-7 range
constexpr double hottest = 1000.0;

/// NASA seven-coefficient form, low range: a1 to a6 (the entropy constant a7 is not needed).
using Nasa = std::array<double, 6>;

// NASA TM-4513 (McBride, Gordon, Reno 1993), as carried by Cantera's nasa_gas.yaml.
constexpr Nasa nasa_nitrogen{3.53100528,    -1.23660987e-4,  -5.02999437e-7,
                             2.43530612e-9, -1.40881235e-12, -1046.97628};
constexpr Nasa nasa_oxygen{3.78245636,     -2.99673415e-3, 9.847302e-6,
                           -9.68129508e-9, 3.24372836e-12, -1063.94356};
constexpr Nasa nasa_argon{2.5, 0.0, 0.0, 0.0, 0.0, -745.375};
constexpr Nasa nasa_carbon_dioxide{2.35677352,    8.98459677e-3,   -7.12356269e-6,
                                   2.45919022e-9, -1.43699548e-13, -48371.9697};
constexpr Nasa nasa_water{4.19864056,     -2.0364341e-3,  6.52040211e-6,
                          -5.48797062e-9, 1.77197817e-12, -30293.7267};
constexpr Nasa nasa_methanol{5.71539582,     -1.52309129e-2, 6.52441155e-5,
                             -7.10806889e-8, 2.61352698e-11, -25642.7656};
constexpr Nasa nasa_ethanol{4.85868178,     -3.7400674e-3, 6.95550267e-5,
                            -8.86541147e-8, 3.5168443e-11, -29996.1309};
constexpr Nasa nasa_iso_octane{0.815737338,   7.32643959e-2,  1.78300688e-5,
                               -6.9358962e-8, 3.21629382e-11, -30477.2862};
constexpr Nasa nasa_toluene{1.611914,       2.11188902e-2,  8.53221453e-5,
                            -1.32566876e-7, 5.59406109e-11, 4096.51976};

constexpr Gas per_kilogram(const Nasa& a, double molar_mass) {
    const double R = molar_gas / molar_mass;
    return {R, {R * a[0], R * a[1], R * a[2], R * a[3], R * a[4]}, R * a[5]};
}

constexpr Gas sum(double m, const Gas& a, double n, const Gas& b) {
    Gas both{m * a.R + n * b.R, {}, m * a.h0 + n * b.h0};
    for (std::size_t i = 0; i < both.c.size(); ++i)
        both.c[i] = m * a.c[i] + n * b.c[i];
    return both;
}

constexpr double polynomial(const std::array<double, 5>& c, double T) {
    return c[0] + T * (c[1] + T * (c[2] + T * (c[3] + T * c[4])));
}

constexpr double integral(const std::array<double, 5>& c, double T) {
    constexpr double third = 1.0 / 3, fifth = 1.0 / 5;  // a product is quicker than a quotient
    return T * (c[0] + T * (c[1] / 2 + T * (c[2] * third + T * (c[3] / 4 + T * c[4] * fifth))));
}

constexpr Gas gas_nitrogen = per_kilogram(nasa_nitrogen, molar_mass_nitrogen);
constexpr Gas gas_oxygen = per_kilogram(nasa_oxygen, molar_mass_oxygen);
constexpr Gas gas_argon = per_kilogram(nasa_argon, molar_mass_argon);
constexpr Gas gas_carbon_dioxide = per_kilogram(nasa_carbon_dioxide, molar_mass_carbon_dioxide);

constexpr Gas make_air() {
    const double M = molar_mass_air;
    const Gas diatomic = sum(air_nitrogen * molar_mass_nitrogen / M, gas_nitrogen,
                             air_oxygen * molar_mass_oxygen / M, gas_oxygen);
    const Gas rest = sum(air_argon * molar_mass_argon / M, gas_argon,
                         air_carbon_dioxide * molar_mass_carbon_dioxide / M, gas_carbon_dioxide);
    return sum(1, diatomic, 1, rest);
}

// Petrol is hundreds of substances. Its vapour is modelled as iso-octane and toluene in the mass
// shares whose hydrogen to carbon ratio is that of petrol, 1.87.
constexpr double petrol_hydrogen = 1.87;
constexpr double petrol_toluene_mass = 0.3251;

constexpr double formation(const Nasa& a) {
    constexpr double T = reference_temperature;
    return molar_gas * (integral({a[0], a[1], a[2], a[3], a[4]}, T) + a[5]);
}

/// Enthalpy of formation, J/kg of vapour, with which the liquid's lower heating value and latent
/// heat come out: CH1.87 + 1.4675 O2 -> CO2 + 0.935 H2O.
constexpr double petrol_formation() {
    constexpr double carbon = 12.0107e-3, hydrogen = 1.00794e-3;
    const double products =
        formation(nasa_carbon_dioxide) + petrol_hydrogen / 2 * formation(nasa_water);
    constexpr Liquid petrol = liquid(Vapour::petrol);
    return petrol.heating_value + petrol.latent_heat +
           products / (carbon + petrol_hydrogen * hydrogen);
}

constexpr Gas make_petrol() {
    Gas petrol = sum(1 - petrol_toluene_mass, per_kilogram(nasa_iso_octane, molar_mass_iso_octane),
                     petrol_toluene_mass, per_kilogram(nasa_toluene, molar_mass_toluene));
    petrol.h0 = petrol_formation() - integral(petrol.c, reference_temperature);
    return petrol;
}

constexpr std::array<Gas, 8> table{gas_nitrogen,
                                   gas_oxygen,
                                   gas_argon,
                                   gas_carbon_dioxide,
                                   per_kilogram(nasa_water, molar_mass_water),
                                   per_kilogram(nasa_methanol, molar_mass_methanol),
                                   per_kilogram(nasa_ethanol, molar_mass_ethanol),
                                   make_petrol()};
constexpr Gas air = make_air();

}  // namespace

double Gas::heat_capacity(double T) const noexcept {
    return polynomial(c, std::clamp(T, coldest, hottest));
}

double Gas::enthalpy(double T) const noexcept {
    const double inside = std::clamp(T, coldest, hottest);
    return integral(c, inside) + polynomial(c, inside) * (T - inside) + h0;
}

double Gas::gamma(double T) const noexcept {
    const double cp = heat_capacity(T);
    return cp / (cp - R);
}

double Gas::temperature(double target, double guess) const noexcept {
    double T = std::clamp(guess, coldest, hottest);
    // Enthalpy rises with temperature and bends little: Newton from any guess needs 3 or 4 steps.
    for (int step = 0; step < 20; ++step) {
        const double change = (target - enthalpy(T)) / heat_capacity(T);
        T += change;
        if (std::abs(change) <= 1e-12 * std::abs(T)) break;
    }
    return std::max(T, 1.0);
}

Gas perfect_gas(double R, double cp) noexcept {
    return {R, {cp, 0, 0, 0, 0}, -cp * reference_temperature};
}

const Gas& dry_air() noexcept { return air; }

const Gas& species_gas(Species species) noexcept {
    return table[static_cast<std::size_t>(species)];
}

Gas mixed(const Gas& a, double share, const Gas& b) noexcept {
    const double whole = 1 + share;
    return sum(1 / whole, a, share / whole, b);
}

void add(Gas& sum, double share, const Gas& other) noexcept {
    sum.R += share * other.R;
    sum.h0 += share * other.h0;
    for (std::size_t i = 0; i < sum.c.size(); ++i)
        sum.c[i] += share * other.c[i];
}

}  // namespace windwall::media
