#include "windwall/charge/spray_start.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::charge {
namespace {

/// Where x - (1 - e^-x) is `volume`: how many rise times it takes to pump a volume, counted in what
/// the whole flow pumps in one. Newton's from the right, where the curve bends upwards.
double rises_to_pump(double volume) noexcept {
    if (!(volume > 0)) return 0;
    double x = volume + std::min(1.0, std::sqrt(2 * volume));
    for (int step = 0; step < 50; ++step) {
        const double off = x + std::expm1(-x) - volume;
        if (!(off > 1e-15 * x)) break;
        x += off / std::expm1(-x);
    }
    return x;
}

/// What a lag of first order has let through of e^(-t/decay), t after it began.
double lagged_decay(double time, double decay, double lag) noexcept {
    const double apart = time * (1 / lag - 1 / decay);
    if (std::abs(apart) > 1e-3)
        return (std::exp(-time / decay) - std::exp(-time / lag)) * decay / (decay - lag);
    return std::exp(-time / lag) * time / lag * (1 + apart / 2 + apart * apart / 6);
}

}  // namespace

double SprayStart::first_liquid() const noexcept {
    return delay + rise_time * rises_to_pump(fill_time / rise_time);
}

double SprayStart::running(double time) const noexcept {
    return time > delay ? -std::expm1(-(time - delay) / rise_time) : 0;
}

double SprayStart::sprayed(double time) const noexcept {
    return time >= first_liquid() ? running(time) : 0;
}

double SprayStart::arrived(double time) const noexcept {
    const double first = first_liquid(), since = time - first;
    if (!(since > 0)) return 0;
    const double missing = 1 - running(first);
    const double film =
        -std::expm1(-since / film_time) - missing * lagged_decay(since, rise_time, film_time);
    return (1 - film_share) * running(time) + film_share * film;
}

}  // namespace windwall::charge
