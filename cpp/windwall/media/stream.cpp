#include "windwall/media/stream.hpp"

namespace windwall::media {
namespace {

constexpr std::array<Species, 4> species_of{Species::water, Species::methanol, Species::ethanol,
                                            Species::petrol};

double total(const std::array<double, 4>& shares) noexcept {
    return shares[0] + shares[1] + shares[2] + shares[3];
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

const Gas& vapour_gas(Vapour vapour) noexcept { return species_gas(species_of[index(vapour)]); }

Gas gas_phase(const std::array<double, 4>& vapour) noexcept {
    Gas gas = dry_air();
    for (const Vapour each : all_vapours)
        if (const double share = vapour[index(each)]; share != 0) add(gas, share, vapour_gas(each));
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
