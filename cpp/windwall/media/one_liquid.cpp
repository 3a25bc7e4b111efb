#include "windwall/media/one_liquid.hpp"

#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media::joint {
namespace {

constexpr double middle = 0.4;  // evaporated share at which petrol is judged

double latent_heat(const Contents& contents, Vapour kind, double T) {
    return contents.all[index(kind)] * (vapour_gas(kind).enthalpy(T) - liquid_enthalpy(kind, T));
}

}  // namespace

double OneLiquid::volatility(double T) const noexcept {
    return K * std::exp(steepness * (1 / at - 1 / T));
}

double OneLiquid::vapour(double T) const noexcept {
    const double share = volatility(T);
    return share < moles / (1 + moles) ? share / (1 - share) : moles;
}

bool OneLiquid::is_wet(double T) const noexcept {
    return moles > 0 && last * volatility(T) < moles / (1 + moles);
}

double OneLiquid::heat(double T) const noexcept {
    return moles > 0 ? latent * vapour(T) / moles : 0;
}

double OneLiquid::heat_slope(double T) const noexcept {
    const double of_it = vapour(T);
    return of_it < moles ? heat(T) * (1 + of_it) * steepness / (T * T) : 0;
}

OneLiquid mixture_as_one(const Contents& contents, double T) noexcept {
    OneLiquid one{contents.mixture, 0, T, 0, 1, 0};
    if (!(contents.mixture > 0)) return one;
    const Activity held = activity(contents.pair, contents.alcohol_share);
    double growth = 0, room = 0;
    for (const Vapour kind : {Vapour::water, Vapour::methanol, Vapour::ethanol}) {
        const double share = contents.moles[index(kind)] / contents.mixture;
        if (!(share > 0)) continue;
        const auto [pressure, pure_growth] = saturation(kind, T);
        const double K =
            pressure / contents.pressure * (kind == Vapour::water ? held.water : held.alcohol);
        one.K += share * K;
        growth += share * K * pure_growth;
        room += share / K;
        one.latent += latent_heat(contents, kind, T);
    }
    one.last = 1 / (room * one.K);
    one.steepness = growth / one.K * T * T;
    return one;
}

OneLiquid petrol_as_one(const Contents& contents, double T) noexcept {
    OneLiquid one{contents.petrol, 0, T, 0, 1, 0};
    if (!(contents.petrol > 0)) return one;
    const auto [pressure, growth] = saturation(Vapour::petrol, T);
    one.K = pressure / contents.pressure * std::exp(-petrol_fall * middle);
    one.last = std::exp(-petrol_fall * (1 - middle));
    one.steepness = growth * T * T;
    one.latent = latent_heat(contents, Vapour::petrol, T);
    return one;
}

}  // namespace windwall::media::joint
