#include "windwall/charge/crossflow.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::charge {
namespace {

constexpr double most_transfer_units = 60;
constexpr int most_terms = 400;  // the tails are below 1e-16 long before

/// Chances of a Poisson count: of being exactly n, and of being above n.
struct Poisson {
    double mean;
    double exactly = std::exp(-mean);
    double above = -std::expm1(-mean);

    void next(int n) {
        exactly *= mean / n;
        above = std::max(above - exactly, 0.0);
    }
};

}  // namespace

double crossflow_effectiveness(double transfer_units, double capacity_ratio) noexcept {
    const double units = std::clamp(transfer_units, 0.0, most_transfer_units);
    const double ratio = std::clamp(capacity_ratio, 0.0, 1.0);
    if (units * ratio < 1e-12) return -std::expm1(-units);
    // The series is the mean of the smaller of two Poisson counts, over the mean of the second.
    Poisson little{units};
    Poisson large{units * ratio};
    double sum = little.above * large.above;
    for (int n = 1; n < most_terms; ++n) {
        little.next(n);
        large.next(n);
        const double term = little.above * large.above;
        sum += term;
        if (term <= 1e-16 * sum) break;
    }
    return std::min(sum / large.mean, 1.0);
}

double cooler_conductance(double charge_flow, double cooling_flow, double conductance,
                          double at_charge_flow, double at_cooling_flow, double hot_side_share,
                          double charge_exponent, double cooling_exponent) noexcept {
    if (!(charge_flow > 0 && cooling_flow > 0)) return 0;
    const double hot = hot_side_share * std::pow(at_charge_flow / charge_flow, charge_exponent);
    const double cold =
        (1 - hot_side_share) * std::pow(at_cooling_flow / cooling_flow, cooling_exponent);
    return conductance / (hot + cold);
}

}  // namespace windwall::charge
