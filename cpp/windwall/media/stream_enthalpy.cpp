#include "windwall/media/stream_enthalpy.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/liquids.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

Gas condensed_gas(Vapour vapour) {
    constexpr double known_at = constants::reference_temperature;
    const Liquid& known = liquid(vapour);
    return {
        0,
        {known.heat_capacity, 0, 0, 0, 0},
        vapour_gas(vapour).enthalpy(known_at) - known.latent_heat - known.heat_capacity * known_at};
}

double heat_capacity_of_liquid(const Stream& stream) {
    double sum = 0;
    for (std::size_t i = 0; i < liquids.size(); ++i)
        sum += stream.liquid[i] * liquids[i].heat_capacity;
    return sum;
}

/// By volume of drops: the surface of the whole stays what it was.
double mean_diameter(double one, double diameter_one, double other, double diameter_other) {
    if (!(other > 0)) return diameter_one;
    if (!(one > 0 && diameter_one > 0)) return diameter_other;
    if (!(diameter_other > 0)) return diameter_one;
    return (one + other) / (one / diameter_one + other / diameter_other);
}

}  // namespace

const Gas& liquid_phase(Vapour vapour) noexcept {
    static const std::array<Gas, 4> table{
        condensed_gas(Vapour::water), condensed_gas(Vapour::methanol),
        condensed_gas(Vapour::ethanol), condensed_gas(Vapour::petrol)};
    return table[index(vapour)];
}

double liquid_enthalpy(Vapour vapour, double temperature) noexcept {
    const Gas& phase = liquid_phase(vapour);
    return phase.h0 + phase.c[0] * temperature;
}

double enthalpy_per_dry_air(const Stream& stream) noexcept {
    double sum = (1 + stream.vapour_share()) * stream.gas.enthalpy(stream.temperature);
    for (const Vapour each : all_vapours) {
        const double share = stream.liquid[index(each)];
        if (share != 0) sum += share * liquid_enthalpy(each, stream.temperature);
    }
    return sum;
}

double enthalpy_flow(const Stream& stream) noexcept {
    return stream.dry_air * enthalpy_per_dry_air(stream);
}

double capacity_per_dry_air(const Stream& stream) noexcept {
    return (1 + stream.vapour_share()) * stream.gas.heat_capacity(stream.temperature) +
           heat_capacity_of_liquid(stream);
}

Stream at_enthalpy(Stream stream, double target) noexcept {
    // Nearly straight in the temperature: after a step this short the next is lost in rounding.
    for (int step = 0; step < 20; ++step) {
        const double change =
            (target - enthalpy_per_dry_air(stream)) / capacity_per_dry_air(stream);
        stream.temperature = std::max(stream.temperature + change, 1.0);
        if (std::abs(change) <= 1e-8 * stream.temperature) break;
    }
    return stream;
}

Stream with_liquid(Stream stream, const std::array<double, 4>& added, double temperature,
                   double drop_diameter) noexcept {
    double brought = 0, mass = 0;
    for (const Vapour kind : all_vapours) {
        brought += added[index(kind)] * liquid_enthalpy(kind, temperature);
        mass += added[index(kind)];
    }
    if (!(mass > 0)) return stream;
    const double enthalpy = enthalpy_per_dry_air(stream) + brought;
    const double before = stream.liquid_share();
    const double film = stream.film_share * before;
    stream.drop_diameter = mean_diameter(before - film, stream.drop_diameter, mass, drop_diameter);
    for (std::size_t i = 0; i < added.size(); ++i)
        stream.liquid[i] += added[i];
    stream.film_share = film / (before + mass);
    stream.fed += brought;
    return at_enthalpy(stream, enthalpy);
}

void mix_drops(Stream& both, const Stream& first, const Stream& second, double share) noexcept {
    both.fed = std::lerp(first.fed, second.fed, share);
    const double liquid = both.liquid_share();
    if (!(liquid > 0)) {
        both.drop_diameter = both.film_share = 0;
        return;
    }
    const double a = (1 - share) * first.liquid_share(), b = share * second.liquid_share();
    both.film_share = (a * first.film_share + b * second.film_share) / liquid;
    both.drop_diameter = mean_diameter(a * (1 - first.film_share), first.drop_diameter,
                                       b * (1 - second.film_share), second.drop_diameter);
}

Stream mixed(const Stream& first, const Stream& second, double ratio) noexcept {
    Stream both = first;
    both.dry_air = first.dry_air * (1 + ratio);
    const double share = ratio / (1 + ratio);
    bool alike = true;
    for (std::size_t i = 0; i < both.vapour.size(); ++i) {
        both.vapour[i] = std::lerp(first.vapour[i], second.vapour[i], share);
        both.liquid[i] = std::lerp(first.liquid[i], second.liquid[i], share);
        alike = alike && first.vapour[i] == second.vapour[i];
    }
    mix_drops(both, first, second, share);
    if (!alike) both.gas = gas_phase(both.vapour);
    const double enthalpy =
        std::lerp(enthalpy_per_dry_air(first), enthalpy_per_dry_air(second), share);
    return at_enthalpy(both, enthalpy);
}

double heat_given_off(const Stream& inlet, const Stream& outlet) noexcept {
    const double fed = outlet.fed - inlet.fed;
    return inlet.dry_air * (enthalpy_per_dry_air(inlet) + fed - enthalpy_per_dry_air(outlet));
}

double condensed(const Stream& inlet, const Stream& outlet) noexcept {
    return std::max(outlet.liquid_share() - inlet.liquid_share(), 0.0);
}

}  // namespace windwall::media
