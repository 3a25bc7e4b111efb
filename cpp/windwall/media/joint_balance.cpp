#include "windwall/media/joint_balance.hpp"

#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media::joint {
namespace {

constexpr std::size_t petrol_at = index(Vapour::petrol);

void add(Sloped& sum, double share, const Sloped& other) {
    sum.value += share * other.value;
    sum.slope += share * other.slope;
}

}  // namespace

Balance::Balance(const Contents& contents, const Gas& all_liquid, double enthalpy) noexcept
    : contents_(contents), all_liquid_(all_liquid), enthalpy_(enthalpy) {}

void Balance::at(const Vector& unknowns) noexcept {
    pure_ = volatility(contents_, unknowns[temperature]);
    count_mixture(unknowns);
    count_petrol(unknowns);
    residual = {0, liquid_moles_.value - gas_.value, composition_.value, petrol_.value};
    jacobian.row(ratio) = liquid_moles_.slope - gas_.slope;
    jacobian.row(alcohol) = composition_.slope;
    jacobian.row(petrol) = petrol_.slope;
    weigh(unknowns[temperature]);
    gas = gas_.value;
}

/// Each substance's vapour, and its moles in the liquid for each mole of gas: the latter add up to
/// the ratio, here divided by it, so that both stay finite where the liquid ends.
void Balance::count_mixture(const Vector& unknowns) noexcept {
    const double R = unknowns[ratio], x = unknowns[alcohol];
    gas_ = {1};
    liquid_moles_ = composition_ = {};
    Activity held{1, 1}, bend{0, 0};
    if (contents_.mixed) {
        held = activity(contents_.pair, x);
        bend = log_activity_slope(contents_.pair, x);
    }
    least_volatile = 1e300;
    for (std::size_t i = 0; i < petrol_at; ++i) {
        const double moles = contents_.moles[i];
        if (!(moles > 0)) continue;
        const bool is_water = i == index(Vapour::water);
        const double K = pure_.K[i] * (is_water ? held.water : held.alcohol);
        const Vector growth{pure_.growth[i], 0, is_water ? bend.water : bend.alcohol, 0};
        const double part = 1 / (R + K), share = K * part;
        evaporated[i] = {share, share * (1 - share) * growth - share * part * Vector::Unit(ratio)};
        const Sloped liquid{part, -part * (share * growth + part * Vector::Unit(ratio))};
        add(gas_, moles, evaporated[i]);
        add(liquid_moles_, moles, liquid);
        add(composition_, moles * ((is_water ? 0 : 1) - x), liquid);
        least_volatile = std::min(least_volatile, K);
    }
    composition_.slope[alcohol] -= liquid_moles_.value;
}

/// Petrol's own balance: what is vapour of it, less what the gas takes.
void Balance::count_petrol(const Vector& unknowns) noexcept {
    const double share = unknowns[petrol], all = contents_.petrol;
    evaporated[petrol_at] = {share, Vector::Unit(petrol)};
    add(gas_, all, evaporated[petrol_at]);
    const double K = pure_.K[petrol_at] * std::exp(-petrol_fall * share);
    petrol_ = {gas_.value * K - all * share, K * gas_.slope};
    petrol_.slope[temperature] += gas_.value * K * pure_.growth[petrol_at];
    petrol_.slope[petrol] -= petrol_fall * gas_.value * K + all;
}

/// The enthalpy too much, in kelvins of dry air.
void Balance::weigh(double T) noexcept {
    Sloped sum{all_liquid_.enthalpy(T) - enthalpy_};
    sum.slope[temperature] = all_liquid_.heat_capacity(T);
    for (const Vapour kind : all_vapours) {
        const std::size_t i = index(kind);
        const double all = contents_.all[i];
        if (!(all > 0)) continue;
        const Gas &vapour = vapour_gas(kind), &liquid = liquid_phase(kind);
        add(sum, all * (vapour.enthalpy(T) - liquid_enthalpy(kind, T)), evaporated[i]);
        sum.slope[temperature] +=
            all * evaporated[i].value * (vapour.heat_capacity(T) - liquid.c[0]);
    }
    residual[temperature] = 1e-3 * sum.value;
    jacobian.row(temperature) = 1e-3 * sum.slope;
}

}  // namespace windwall::media::joint
