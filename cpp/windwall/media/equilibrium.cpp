#include "windwall/media/equilibrium.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/phase_split.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/media/vapour_pressure.hpp"
#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

using Shares = std::array<double, 4>;

constexpr double hottest = 1000, coldest = 150;  // K, of the search
constexpr double narrow = 1e-13;                 // of the temperature

double per_mole(std::size_t i) { return constants::molar_mass_air / liquids[i].molar_mass; }

/// A stream on its way to equilibrium: all of each substance, and the last liquid found.
class Split {
public:
    explicit Split(const Stream& stream) : stream_(stream) {
        for (std::size_t i = 0; i < moles_.size(); ++i) {
            all_[i] = std::max(stream.vapour[i], 0.0) + std::max(stream.liquid[i], 0.0);
            moles_[i] = all_[i] * per_mole(i);
        }
    }
    const Stream& at(double T) {
        const Shares gas = vapour_moles(moles_, T, stream_.pressure, last_);
        stream_.temperature = T;
        for (std::size_t i = 0; i < gas.size(); ++i) {
            stream_.vapour[i] = std::min(gas[i] / per_mole(i), all_[i]);
            stream_.liquid[i] = all_[i] - stream_.vapour[i];
        }
        stream_.gas = gas_phase(stream_.vapour);
        return stream_;
    }
    /// With everything evaporated, at an enthalpy.
    const Stream& evaporated(double enthalpy) {
        stream_.vapour = all_;
        stream_.liquid = {};
        stream_.gas = gas_phase(all_);
        return stream_ = at_enthalpy(stream_, enthalpy);
    }

private:
    Stream stream_;
    Shares all_{}, moles_{};
    LastLiquid last_;
};

/// Temperature at which the enthalpy in equilibrium, which rises with it, is the one given: from
/// `low`, where it is too little, by growing steps and then inside the bracket.
double temperature_of(Split& split, double enthalpy, double low, double excess_low) {
    const auto excess = [&](double T) { return enthalpy_per_dry_air(split.at(T)) - enthalpy; };
    double step = 2, high = std::min(low + step, hottest);
    double excess_high = excess(high);
    while (excess_high < 0 && high < hottest) {
        low = high;
        excess_low = excess_high;
        step *= 2;
        high = std::min(high + step, hottest);
        excess_high = excess(high);
    }
    if (excess_high <= 0) return high;
    return numerics::find_root(excess, {low, high, excess_low, excess_high, 0, true},
                               {0, narrow, 100})
        .x;
}

/// Drops shrink with what leaves them; their number stays.
void shrink(Stream& stream, double liquid_before) {
    const double left = stream.liquid_share();
    if (!(left > 0)) {
        stream.drop_diameter = stream.film_share = 0;
    } else if (liquid_before > 0) {
        stream.drop_diameter *= std::cbrt(left / liquid_before);
    }
}

}  // namespace

bool is_dry(const Stream& stream) noexcept {
    if (stream.liquid_share() > 0) return false;
    const auto& [water, methanol, ethanol, petrol] = stream.vapour;
    if (!(stream.vapour_share() > 0)) return true;
    const double T = stream.temperature, p = stream.pressure;
    if (methanol + ethanol + petrol == 0) {
        const double ratio = water * per_mole(0);
        return ratio / (1 + ratio) * p <= vapour_pressure(Vapour::water, T);
    }
    return !(equilibrium_at_temperature(stream).liquid_share() > 0);
}

Stream equilibrium_at_temperature(Stream stream) noexcept {
    const double before = stream.liquid_share();
    Split split(stream);
    Stream found = split.at(stream.temperature);
    shrink(found, before);
    return found;
}

Stream equilibrium_at_enthalpy(const Stream& stream, double enthalpy) noexcept {
    const double before = stream.liquid_share();
    Split split(stream);
    Stream found = split.evaporated(enthalpy);
    // Nothing would condense again: the rest of the search is only for streams that stay wet.
    if (!is_dry(found)) {
        const double low = std::max(found.temperature, coldest);
        const double gap = enthalpy_per_dry_air(split.at(low)) - enthalpy;
        if (gap < 0) {
            const double T = temperature_of(split, enthalpy, low, gap);
            // What rounding leaves of the search goes into the temperature.
            found = at_enthalpy(split.at(T), enthalpy);
        } else {
            found = at_enthalpy(split.at(low), enthalpy);
        }
    }
    shrink(found, before);
    return found;
}

Stream adiabatic_equilibrium(const Stream& stream) noexcept {
    if (is_dry(stream)) return stream;
    return equilibrium_at_enthalpy(stream, enthalpy_per_dry_air(stream));
}

Stream towards(const Stream& stream, const Stream& equilibrium, double share,
               double enthalpy) noexcept {
    Stream there = stream;
    const double before = stream.liquid_share();
    for (std::size_t i = 0; i < there.liquid.size(); ++i) {
        const double becomes = share * (equilibrium.vapour[i] - stream.vapour[i]);
        there.vapour[i] += becomes;
        there.liquid[i] = std::max(there.liquid[i] - becomes, 0.0);
    }
    there.gas = gas_phase(there.vapour);
    shrink(there, before);
    return at_enthalpy(there, enthalpy);
}

Stream partly_settled(const Stream& stream, double enthalpy, double share) noexcept {
    return towards(stream, equilibrium_at_enthalpy(stream, enthalpy), share, enthalpy);
}

}  // namespace windwall::media
