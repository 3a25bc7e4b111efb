#include "windwall/media/joint_guess.hpp"

#include "windwall/media/one_liquid.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media::joint {
namespace {

constexpr double coldest = 220, hottest = 450;  // K, where pressures are taken
constexpr double good_enough = 5;               // K
// A liquid is begun with a little of itself, so that it can show which way it goes.
constexpr double least_liquid = 0.02, most_evaporated = 0.95;

struct Liquids {
    OneLiquid mixture, petrol;
};

Liquids liquids_at(const Contents& contents, double T) {
    return {mixture_as_one(contents, T), petrol_as_one(contents, T)};
}

/// Between the temperatures with all as vapour and all as liquid: Newton in the logarithm of the
/// heat that is in vapour, which is nearly straight, inside a bracket.
double between(const Liquids& liquids, double low, double all_liquid, double capacity) {
    const auto& [mixture, petrol] = liquids;
    double high = all_liquid, T = (low + high) / 2;
    for (int step = 0; step < 6; ++step) {
        const double vapours = mixture.heat(T) + petrol.heat(T);
        const double excess = std::log(vapours / (capacity * (all_liquid - T)));
        const double slope =
            (mixture.heat_slope(T) + petrol.heat_slope(T)) / vapours + 1 / (all_liquid - T);
        (excess < 0 ? low : high) = T;
        const double newton = T - excess / slope, before = T;
        T = newton > low && newton < high ? newton : (low + high) / 2;
        if (std::abs(T - before) < good_enough) break;
    }
    return T;
}

Guess guess_from(const Contents& contents, const Liquids& liquids, double T) {
    const auto& [mixture, petrol_] = liquids;
    const bool wet = mixture.is_wet(T), petrol_wet = petrol_.is_wet(T);
    const double vapour = mixture.vapour(T), petrol_vapour = petrol_.vapour(T);
    const double liquid = std::max(mixture.moles - vapour, least_liquid * mixture.moles);
    return {{T, wet ? liquid / (1 + vapour + petrol_vapour) : 0, contents.alcohol_share,
             petrol_wet ? std::min(petrol_vapour / petrol_.moles, most_evaporated) : 1},
            {true, wet, wet && contents.mixed, petrol_wet}};
}

}  // namespace

Guess guess_at_enthalpy(const Contents& contents, const Gas& all_liquid, double enthalpy,
                        double all_vapour) noexcept {
    const double T = std::clamp(all_vapour, coldest, hottest);
    const double capacity = all_liquid.heat_capacity(T);
    const double hot = T + (enthalpy - all_liquid.enthalpy(T)) / capacity;
    const Liquids liquids = liquids_at(contents, T);
    return guess_from(contents, liquids,
                      hot > all_vapour ? between(liquids, all_vapour, hot, capacity) : T);
}

Guess guess_at_temperature(const Contents& contents, double temperature) noexcept {
    Guess guess = guess_from(contents, liquids_at(contents, temperature), temperature);
    guess.sought[Unknown::temperature] = false;
    return guess;
}

}  // namespace windwall::media::joint
