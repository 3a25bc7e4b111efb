#include "windwall/media/phase_split.hpp"

#include "windwall/numerics/falling_root.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

using Moles = std::array<double, 4>;
using numerics::Point;

constexpr std::size_t petrol = index(Vapour::petrol);
constexpr std::size_t water = index(Vapour::water);
constexpr double close = 1e-14;
constexpr double settled = 1e-13;  // of the liquid's composition

/// Petrol vapour beside `other` moles of gas: (other + v) K exp(-fall v/all) = v, or all of it.
double petrol_vapour(double all, double other, double K) {
    if (!(all > 0)) return 0;
    const auto excess = [&](double v) -> Point {
        const double share = K * std::exp(-petrol_fall * v / all);
        return {(other + v) * share - v, share - (other + v) * share * petrol_fall / all - 1};
    };
    if (excess(all).value >= 0) return all;
    return numerics::falling_root(excess, 0, all, all / 2, 4 * close);
}

/// The flash of one liquid of water and alcohols, with known activities, beside petrol.
struct Flash {
    const Moles& moles;
    Moles K{};         // activity times vapour pressure over pressure; petrol: of its first drop
    double ratio = 0;  // moles of liquid for each mole of gas
    double last = -1;  // the ratio of a split nearby, if one is known

    /// Evaporated share of a substance, exactly 1 without liquid.
    double share(std::size_t i) const { return ratio > 0 ? K[i] / (ratio + K[i]) : 1; }
    double vapour(std::size_t i) const { return moles[i] * share(i); }
    /// Gas without petrol, moles.
    double gas() const { return 1 + vapour(0) + vapour(1) + vapour(2); }
    double petrol_gas() const { return petrol_vapour(moles[petrol], gas(), K[petrol]); }
    /// d(petrol vapour)/d(other gas), from its balance.
    double petrol_slope(double other, double v) const {
        if (!(v > 0 && v < moles[petrol])) return 0;
        const double share = v / (other + v);
        return share / (1 - share + v * petrol_fall / moles[petrol]);
    }

    /// Gas that the liquid's mole shares, adding up to one, ask for, less the gas there is.
    Point excess(double at) {
        ratio = at;
        const double petrol_part = petrol_gas();
        const double pull = petrol_slope(gas(), petrol_part);
        Point sum{-1 - petrol_part, 0};
        for (std::size_t i = 0; i < petrol; ++i) {
            const double part = ratio + K[i];
            sum.value += moles[i] * (1 - K[i]) / part;
            sum.slope -= moles[i] * (1 - K[i] - pull * K[i]) / (part * part);
        }
        return sum;
    }
    void solve() {
        ratio = 0;
        const double all = moles[0] + moles[1] + moles[2];
        if (!(all > 0) || !(excess(0).value > 0)) {
            ratio = 0;
            return;
        }
        const double start = last > 0 && last < all ? last : all / 2;
        ratio = numerics::falling_root([this](double at) { return excess(at); }, 0, all, start,
                                       4 * close);
        last = ratio;
    }
    /// Mole share of alcohol in the liquid, or in the first drop that would form.
    double alcohol_share() const {
        const auto liquid = [this](std::size_t i) {
            return moles[i] > 0 ? moles[i] / (ratio + K[i]) : 0;
        };
        const double alcohols = liquid(1) + liquid(2);
        return alcohols / (alcohols + liquid(water));
    }
};

void set_activity(Flash& flash, const Moles& pure, const VanLaar& pair, double alcohol_share) {
    const Activity held = activity(pair, alcohol_share);
    flash.K = {held.water * pure[0], held.alcohol * pure[1], held.alcohol * pure[2], pure[3]};
    flash.solve();
}

/// The liquid whose activities bring about the liquid itself: secant steps inside a bracket.
void find_liquid(Flash& flash, const Moles& pure, const VanLaar& pair, double& share) {
    double low = 0, high = 1, before = -1, gap_before = 0;
    double x = std::clamp(share, 1e-6, 1 - 1e-6);
    for (int step = 0; step < 60; ++step) {
        set_activity(flash, pure, pair, x);
        const double gap = flash.alcohol_share() - x;
        (gap > 0 ? low : high) = x;
        double next = before < 0 ? x + gap : x - gap * (x - before) / (gap - gap_before);
        if (!(next >= low && next <= high)) next = (low + high) / 2;
        const double change = std::abs(next - x);
        if (std::abs(gap) <= settled || change <= close) break;
        before = x;
        gap_before = gap;
        x = next;
    }
    share = x;
}

}  // namespace

std::array<double, 4> evaporated_shares(const Contents& contents, double temperature,
                                        LastLiquid& last) noexcept {
    const Moles pure = volatility(contents, temperature).K;
    Flash flash{contents.moles, pure, 0, last.moles};
    if (contents.mixed) {
        find_liquid(flash, pure, contents.pair, last.alcohol_share);
    } else {
        flash.solve();
    }
    last.moles = flash.last;
    const double of_petrol = contents.petrol > 0 ? flash.petrol_gas() / contents.petrol : 1;
    return {flash.share(0), flash.share(1), flash.share(2), of_petrol};
}

}  // namespace windwall::media
