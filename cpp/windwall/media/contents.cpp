#include "windwall/media/contents.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

constexpr std::size_t water = index(Vapour::water), petrol_at = index(Vapour::petrol);

/// The share x where ln[x/(1 - x)] + ln(activity of alcohol/activity of water) is `goal`: Newton in
/// the first logarithm, in which the left side is nearly straight and always rises.
double alcohol_share_of(const VanLaar& pair, double goal) {
    double odds = goal, x = 0;
    for (int step = 0; step < 20; ++step) {
        x = 1 / (1 + std::exp(-odds));
        const Activity held = log_activity(pair, x), bend = log_activity_slope(pair, x);
        const double slope = 1 + x * (1 - x) * (bend.alcohol - bend.water);
        const double change = (goal - odds - held.alcohol + held.water) / slope;
        odds += change;
        if (std::abs(change) <= 1e-7) break;  // the room is level there: its error is the square
    }
    return x;
}

/// Moles of gas that hold the water, and the alcohols, were each a liquid of its own.
struct Alone {
    double water, alcohols;
};

Alone room_alone(const Contents& contents, const Volatility& pure) {
    const auto& [of_water, methanol, ethanol, petrol] = contents.moles;
    return {of_water / pure.K[water], methanol / pure.K[1] + ethanol / pure.K[2]};
}

}  // namespace

Contents::Contents(const Stream& stream) noexcept : pressure(stream.pressure) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i] = std::max(stream.vapour[i], 0.0) + std::max(stream.liquid[i], 0.0);
        moles[i] = all[i] / mass(i);
    }
    const double alcohols = moles[1] + moles[2];
    mixture = moles[water] + alcohols;
    petrol = moles[petrol_at];
    alcohol_share = mixture > 0 ? alcohols / mixture : 0;
    pair = alcohol_in_water(moles[1], moles[2]);
    mixed = moles[water] > 0 && alcohols > 0;
}

double Contents::mass(std::size_t substance) noexcept {
    return liquids[substance].molar_mass / constants::molar_mass_air;
}

Gas all_liquid(const Contents& contents) noexcept {
    Gas sum = dry_air();
    for (const Vapour kind : all_vapours)
        add(sum, contents.all[index(kind)], liquid_phase(kind));
    return sum;
}

Stream shared_out(Stream stream, const Contents& contents, const Phases& phases) noexcept {
    stream.temperature = phases.temperature;
    for (std::size_t i = 0; i < contents.all.size(); ++i) {
        stream.vapour[i] = contents.all[i] * phases.evaporated[i];
        stream.liquid[i] = contents.all[i] - stream.vapour[i];
    }
    stream.gas = gas_phase(stream.vapour);
    return stream;
}

Volatility volatility(const Contents& contents, double temperature) noexcept {
    Volatility pure;
    for (const Vapour kind : all_vapours) {
        const std::size_t i = index(kind);
        if (!(contents.moles[i] > 0)) continue;
        const Saturation held = saturation(kind, temperature);
        pure.K[i] = held.pressure / contents.pressure;
        pure.growth[i] = held.growth;
    }
    return pure;
}

FirstDrop first_drop(const Contents& contents, const Volatility& pure) noexcept {
    const auto [of_water, of_alcohols] = room_alone(contents, pure);
    if (!contents.mixed) return {of_water + of_alcohols, contents.alcohol_share};
    const double x = alcohol_share_of(contents.pair, std::log(of_alcohols / of_water));
    const Activity held = activity(contents.pair, x);
    return {of_water / held.water + of_alcohols / held.alcohol, x};
}

double room_for_petrol(const Contents& contents, const Volatility& pure) noexcept {
    return contents.petrol > 0 ? contents.petrol / (pure.K[petrol_at] * std::exp(-petrol_fall)) : 0;
}

bool stays_dry(const Contents& contents, double temperature) noexcept {
    const Volatility pure = volatility(contents, temperature);
    const double gas = contents.all_gas();
    if (!(room_for_petrol(contents, pure) <= gas)) return false;
    const auto [of_water, of_alcohols] = room_alone(contents, pure);
    // In one liquid they hold each other back less than not at all, and more than if apart.
    if (of_water + of_alcohols <= gas) return true;
    return std::max(of_water, of_alcohols) <= gas && first_drop(contents, pure).room <= gas;
}

}  // namespace windwall::media
