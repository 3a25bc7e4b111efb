#include "windwall/media/stream.hpp"

#include "windwall/media/liquids.hpp"

#include <cmath>

namespace windwall::media {
namespace {

constexpr double latent_heat_temperature = 298.15;  // K, of the table of liquids
constexpr std::array<Species, 4> species_of{Species::water, Species::methanol, Species::ethanol,
                                            Species::petrol};

double total(const std::array<double, 4>& shares) noexcept {
    return shares[0] + shares[1] + shares[2] + shares[3];
}

void add(Gas& gas, double share, const Gas& other) noexcept {
    gas.R += share * other.R;
    gas.h0 += share * other.h0;
    for (std::size_t i = 0; i < gas.c.size(); ++i)
        gas.c[i] += share * other.c[i];
}

Gas scaled(Gas gas, double factor) noexcept {
    gas.R *= factor;
    gas.h0 *= factor;
    for (double& c : gas.c)
        c *= factor;
    return gas;
}

}  // namespace

double Stream::vapour_share() const noexcept { return total(vapour); }

double Stream::liquid_share() const noexcept { return total(liquid); }

double Stream::gas_flow() const noexcept { return dry_air * (1 + vapour_share()); }

double Stream::density() const noexcept { return pressure / (gas.R * temperature); }

double liquid_enthalpy(Vapour vapour, double temperature) noexcept {
    const Liquid& known = liquid(vapour);
    const Gas gas = species_gas(species_of[index(vapour)]);
    return gas.enthalpy(latent_heat_temperature) - known.latent_heat +
           known.heat_capacity * (temperature - latent_heat_temperature);
}

double enthalpy(const Stream& stream) noexcept {
    double sum = (1 + stream.vapour_share()) * stream.gas.enthalpy(stream.temperature);
    for (const Vapour each : all_vapours) {
        const double share = stream.liquid[index(each)];
        if (share != 0) sum += share * liquid_enthalpy(each, stream.temperature);
    }
    return sum;
}

double temperature(const Stream& stream, double sought) noexcept {
    // Drops add a straight line to the gas's curve; a few steps of Newton's method suffice.
    double drops = 0;
    for (const Vapour each : all_vapours)
        drops += stream.liquid[index(each)] * liquid(each).heat_capacity;
    Stream trial = stream;
    for (int step = 0; step < 30; ++step) {
        const double slope =
            (1 + stream.vapour_share()) * stream.gas.heat_capacity(trial.temperature) + drops;
        const double change = (sought - enthalpy(trial)) / slope;
        trial.temperature += change;
        if (std::abs(change) < 1e-11 * trial.temperature) break;
    }
    return trial.temperature;
}

Gas gas_phase(const std::array<double, 4>& vapour) noexcept {
    Gas gas = dry_air();
    for (std::size_t i = 0; i < vapour.size(); ++i)
        if (vapour[i] != 0) add(gas, vapour[i], species_gas(species_of[i]));
    return scaled(gas, 1 / (1 + total(vapour)));
}

Stream ambient_stream(double pressure, double temperature, double humidity_ratio,
                      double dry_air) noexcept {
    Stream stream;
    stream.pressure = pressure;
    stream.temperature = temperature;
    stream.dry_air = dry_air;
    stream.vapour[index(Vapour::water)] = humidity_ratio;
    stream.gas = gas_phase(stream.vapour);
    return stream;
}

}  // namespace windwall::media
