#include "windwall/media/joint_guess.hpp"

#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media::joint {
namespace {

constexpr std::size_t petrol_at = index(Vapour::petrol);
constexpr double coldest = 220, hottest = 450;  // K, where pressures are taken
constexpr double middle_of_petrol = 0.4;        // evaporated share it is judged at

/// A liquid as one substance: the mean of what is in it, and Clapeyron's law.
struct OneLiquid {
    double moles{};   // of it and its vapour
    double latent{};  // J per kg of dry air to evaporate all of it
    double K{};       // at the temperature `at`
    double at{};
    double steepness{};  // -d ln(K)/d(1/T), K
    double last{};       // K of its last drop over K

    double K_at(double T) const { return K * std::exp(steepness * (1 / at - 1 / T)); }
    double most() const { return moles / (1 + moles); }
    /// The share of the gas that it fills; the gas cannot hold more than there is.
    double of_gas(double T) const { return std::min(K_at(T), most()); }
    double vapour(double T) const {
        const double share = of_gas(T);
        return share / (1 - share);
    }
    bool is_wet(double T) const { return moles > 0 && last * K_at(T) < most(); }
    /// J per kg of dry air in its vapour, and its slope.
    double heat(double T) const { return moles > 0 ? latent * vapour(T) / moles : 0; }
    double slope(double T) const {
        const double share = of_gas(T);
        return share < most() ? heat(T) / (1 - share) * steepness / (T * T) : 0;
    }
};

double latent_heat(const Contents& contents, std::size_t i, double T) {
    const Vapour kind = all_vapours[i];
    return contents.all[i] * (vapour_gas(kind).enthalpy(T) - liquid_enthalpy(kind, T));
}

struct Liquids {
    OneLiquid mixture, petrol;
};

Liquids liquids_at(const Contents& contents, double T) {
    const Volatility pure = volatility(contents, T);
    Liquids both;
    Activity held{1, 1};
    if (contents.mixed) held = activity(contents.pair, contents.alcohol_share);
    double growth = 0, room = 0;
    for (std::size_t i = 0; i < petrol_at; ++i) {
        if (!(contents.moles[i] > 0)) continue;
        const double K = contents.moles[i] / contents.mixture * pure.K[i] *
                         (i == index(Vapour::water) ? held.water : held.alcohol);
        both.mixture.K += K;
        growth += K * pure.growth[i];
        room += contents.moles[i] * contents.moles[i] / (contents.mixture * K);
        both.mixture.latent += latent_heat(contents, i, T);
    }
    both.mixture.moles = contents.mixture;
    both.mixture.at = both.petrol.at = T;
    both.mixture.steepness = growth > 0 ? growth / both.mixture.K * T * T : 0;
    both.mixture.last = room > 0 ? contents.mixture / (room * both.mixture.K) : 1;
    both.petrol.last = std::exp(-petrol_fall * (1 - middle_of_petrol));
    both.petrol.moles = contents.petrol;
    both.petrol.K = pure.K[petrol_at] * std::exp(-petrol_fall * middle_of_petrol);
    both.petrol.steepness = pure.growth[petrol_at] * T * T;
    if (contents.petrol > 0) both.petrol.latent = latent_heat(contents, petrol_at, T);
    return both;
}

double capacity_of_liquid(const Contents& contents, double T) {
    double sum = dry_air().heat_capacity(T);
    for (const Vapour kind : all_vapours)
        sum += contents.all[index(kind)] * liquid_phase(kind).c[0];
    return sum;
}

/// Where the heat that condensing gives warms the rest from `low`: Newton in the logarithm of the
/// vapours' heat, in which they are nearly straight.
double warmed(const Liquids& liquids, double low, double capacity) {
    const auto& [mixture, petrol] = liquids;
    const double high = low + (mixture.latent + petrol.latent) / capacity;
    double T = (low + high) / 2;
    double below = low, above = high;
    for (int step = 0; step < 6; ++step) {
        const double vapours = mixture.heat(T) + petrol.heat(T), left = capacity * (high - T);
        const double excess = std::log(vapours / left);
        (excess < 0 ? below : above) = T;
        const double slope = (mixture.slope(T) + petrol.slope(T)) / vapours + 1 / (high - T);
        const double next = T - excess / slope;
        const double before = T;
        T = next > below && next < above ? next : (below + above) / 2;
        if (std::abs(T - before) < 0.5) break;
    }
    return T;
}

Guess guess_from(const Contents& contents, const Liquids& liquids, double T) {
    const auto& [mixture, petrol_] = liquids;
    const double wet = mixture.moles > 0 ? mixture.vapour(T) : 0;
    const double petrol_vapour = petrol_.moles > 0 ? petrol_.vapour(T) : 0;
    const double liquid =
        mixture.is_wet(T) ? std::max(mixture.moles - wet, 0.02 * mixture.moles) : 0;
    Guess guess;
    guess.sought = {true, mixture.is_wet(T), contents.mixed && mixture.is_wet(T),
                    petrol_.is_wet(T)};
    guess.unknowns = {T, liquid / (1 + wet + petrol_vapour), contents.alcohol_share,
                      petrol_.is_wet(T) ? std::min(petrol_vapour / petrol_.moles, 0.95) : 1};
    return guess;
}

}  // namespace

Guess guess_at_enthalpy(const Contents& contents, double all_vapour) noexcept {
    const double T = std::clamp(all_vapour, coldest, hottest);
    const Liquids liquids = liquids_at(contents, T);
    return guess_from(contents, liquids,
                      warmed(liquids, all_vapour, capacity_of_liquid(contents, T)));
}

Guess guess_at_temperature(const Contents& contents, double temperature) noexcept {
    Guess guess = guess_from(contents, liquids_at(contents, temperature), temperature);
    guess.sought[Unknown::temperature] = false;
    return guess;
}

}  // namespace windwall::media::joint
