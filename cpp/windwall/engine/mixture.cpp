#include "windwall/engine/mixture.hpp"

#include "windwall/media/liquids.hpp"

#include <algorithm>

namespace windwall::engine {
namespace {

using Shares = std::array<double, 4>;

// Of what the air could burn: keeps lambda finite where a charge carries no fuel.
constexpr double least_fuel = 0.1;

constexpr std::array burnable{media::Vapour::methanol, media::Vapour::ethanol,
                              media::Vapour::petrol};

Shares carried(const media::Stream& charge) noexcept {
    Shares sum = charge.vapour;
    for (std::size_t i = 0; i < sum.size(); ++i)
        sum[i] += charge.liquid[i];
    return sum;
}

/// kg of tank fuel among what the charge carries, told by the petrol in it, or by its alcohol
/// where it holds no petrol.
double metered(const Shares& found, const Shares& of_fuel) noexcept {
    for (const std::size_t i : {3U, 2U, 1U})
        if (of_fuel[i] > 0) return found[i] / of_fuel[i];
    return 0;
}

/// Counts what came beside the tank fuel; kg of air that it needs.
double add_sprayed(Mixture& mixture) noexcept {
    double air = 0;
    for (const media::Vapour vapour : burnable) {
        const double share = mixture.sprayed[media::index(vapour)];
        mixture.injected_fuel += share;
        mixture.heating += share * media::liquid(vapour).heating_value;
        air += share * media::liquid(vapour).stoichiometric_ratio;
    }
    return air;
}

}  // namespace

std::array<double, 4> fuel_for(double lambda, const media::Fuel& fuel) noexcept {
    Shares asked = fuel.shares();
    for (double& share : asked)
        share /= lambda * fuel.stoichiometric_ratio();
    return asked;
}

double air_for_injected(const media::Stream& charge) noexcept {
    Mixture mixture;
    mixture.sprayed = carried(charge);
    return add_sprayed(mixture);
}

Mixture mix(const media::Stream& charge, const media::Fuel& fuel, double target,
            bool trimmed) noexcept {
    return mix_for(charge, fuel, 1 / target - (trimmed ? air_for_injected(charge) : 0));
}

Mixture mix_for(const media::Stream& charge, const media::Fuel& fuel, double air) noexcept {
    Mixture mixture;
    mixture.sprayed = carried(charge);
    const double injected = add_sprayed(mixture);
    const double left = std::max(0.0, air);
    mixture.own_fuel = mixture.tank_fuel = left / fuel.stoichiometric_ratio();
    mixture.port = fuel.shares();
    for (double& share : mixture.port)
        share *= mixture.own_fuel;
    mixture.heating += mixture.own_fuel * fuel.heating_value();
    mixture.lambda = 1 / std::max(least_fuel, left + injected);
    return mixture;
}

Mixture mix_carburetted(const media::Stream& charge, const media::Fuel& fuel) noexcept {
    Mixture mixture;
    mixture.sprayed = carried(charge);
    const Shares shares = fuel.shares();
    mixture.tank_fuel = metered(mixture.sprayed, shares);
    for (const media::Vapour vapour : burnable) {
        double& share = mixture.sprayed[media::index(vapour)];
        share = std::max(0.0, share - mixture.tank_fuel * shares[media::index(vapour)]);
    }
    const double air = add_sprayed(mixture);
    mixture.injected_fuel += mixture.tank_fuel;
    mixture.heating += mixture.tank_fuel * fuel.heating_value();
    const double needed = air + mixture.tank_fuel * fuel.stoichiometric_ratio();
    mixture.lambda = 1 / std::max(least_fuel, needed);
    return mixture;
}

double octane_index(const Mixture& mixture, const media::Fuel& fuel, double sensitivity_weight,
                    double from_gas) noexcept {
    double K = sensitivity_weight;
    K += from_gas * std::max(0.0, 1 - K) * fuel.alcohol_molar_share();
    const double of_tank = fuel.octane_index(K);
    double index = of_tank * mixture.tank_fuel / fuel.molar_mass();
    double moles = mixture.tank_fuel / fuel.molar_mass();
    for (const media::Vapour alcohol : {media::Vapour::methanol, media::Vapour::ethanol}) {
        const double part =
            mixture.sprayed[media::index(alcohol)] / media::liquid(alcohol).molar_mass;
        index += part * media::alcohol_octane(alcohol).motor;
        moles += part;
    }
    return moles > 0 ? std::max(of_tank, index / moles) : of_tank;
}

}  // namespace windwall::engine
