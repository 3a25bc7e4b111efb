#include "windwall/media/nested_equilibrium.hpp"

#include "windwall/media/phase_split.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

constexpr double hottest = 1000, coldest = 150;  // K, of the search
constexpr double narrow = 1e-13;                 // of the temperature

/// Contents in equilibrium at one temperature after another, and the last liquid found.
class Split {
public:
    Split(const Stream& stream, const Contents& contents) : stream_(stream), contents_(contents) {}
    Phases at(double T) { return {T, evaporated_shares(contents_, T, last_)}; }
    double enthalpy(double T) {
        return enthalpy_per_dry_air(shared_out(stream_, contents_, at(T)));
    }

private:
    const Stream& stream_;
    const Contents& contents_;
    LastLiquid last_;
};

/// Temperature at which the enthalpy in equilibrium, which rises with it, is the one given: from
/// `low`, where it is too little, by growing steps and then inside the bracket.
double temperature_of(Split& split, double enthalpy, double low, double excess_low) {
    const auto excess = [&](double T) { return split.enthalpy(T) - enthalpy; };
    double step = 2, high = std::min(low + step, hottest);
    double excess_high = excess(high);
    for (; excess_high < 0 && high < hottest; step *= 2) {
        low = high;
        excess_low = excess_high;
        high = std::min(high + 2 * step, hottest);
        excess_high = excess(high);
    }
    if (excess_high <= 0) return high;
    return numerics::find_root(excess, {low, high, excess_low, excess_high}, {0, narrow, 100}).x;
}

}  // namespace

Phases nested_equilibrium_at_temperature(const Contents& contents, double temperature) noexcept {
    LastLiquid none;
    return {temperature, evaporated_shares(contents, temperature, none)};
}

Phases nested_equilibrium(const Stream& stream, const Contents& contents, double enthalpy,
                          double all_vapour) noexcept {
    Split split(stream, contents);
    const double low = std::max(all_vapour, coldest);
    const double gap = split.enthalpy(low) - enthalpy;
    return split.at(gap < 0 ? temperature_of(split, enthalpy, low, gap) : low);
}

}  // namespace windwall::media
