#include "windwall/engine/end_gas.hpp"

#include "windwall/engine/usual.hpp"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double delay_at_100 = 17.68e-3;
constexpr double octane_exponent = 3.402, pressure_exponent = 1.7, activation = 3800;
constexpr double wiebe = 5;            // and an exponent of 3
constexpr double judged_at = 0.85;     // burnt; beyond, what is left is too little to knock
constexpr double rod_ratio = 3.5;      // rod over crank
constexpr double span = 130 * degree;  // before which a charge is too cold to count
constexpr double slowest = 1;          // rad/s

constexpr int nodes = 64;
using Nodes = Eigen::Array<double, nodes, 1>;

thread_local long evaluated = 0;

/// Crank angles back from the last node, and the weights of an integral over them.
struct Grid {
    Nodes back, cosine, sine, weight;
    Grid() {
        back = Nodes::LinSpaced(nodes, span, 0);
        cosine = back.cos();
        sine = back.sin();
        weight.setConstant(span / (nodes - 1));
        // Gregory's end corrections, of fourth order.
        constexpr double ends[] = {3.0 / 8, 7.0 / 6, 23.0 / 24};
        for (int i = 0; i < 3; ++i) {
            weight[i] *= ends[i];
            weight[nodes - 1 - i] *= ends[i];
        }
    }
};

const Grid& grid() noexcept {
    static const Grid made;
    return made;
}

/// Volume over that at bottom dead centre, at angles `grid().back` before `last`.
Nodes volume(double compression_ratio, double last) noexcept {
    const Nodes cosine = std::cos(last) * grid().cosine + std::sin(last) * grid().sine;
    const Nodes travel =
        1 + rod_ratio - cosine - (rod_ratio * rod_ratio - 1 + cosine.square()).sqrt();
    return (1 + (compression_ratio - 1) / 2 * travel) / compression_ratio;
}

Nodes burnt(const EndGas& charge, double last) noexcept {
    const Nodes part = ((last - grid().back - charge.burn_start) / charge.burn_duration).max(0.0);
    return (1 - (-wiebe * part.cube()).exp()) / (1 - std::exp(-wiebe));
}

/// Integral of `of` over `over` up to each node, by trapezia.
Nodes running(const Nodes& of, const Nodes& over) noexcept {
    Nodes sum;
    sum[0] = of[0] * over[0];
    for (int i = 1; i < nodes; ++i)
        sum[i] = sum[i - 1] + (of[i] + of[i - 1]) / 2 * (over[i] - over[i - 1]);
    return sum;
}

}  // namespace

double ignition_delay(double octane_number, double pressure, double temperature) noexcept {
    return delay_at_100 * std::pow(octane_number / 100, octane_exponent) *
           std::pow(pressure / media::constants::isa_pressure, -pressure_exponent) *
           std::exp(activation / temperature);
}

double burnt_share(double part) noexcept {
    const double z = std::clamp(part, 0.0, 1.0);
    return (1 - std::exp(-wiebe * z * z * z)) / (1 - std::exp(-wiebe));
}

double part_at_burnt(double share) noexcept {
    return std::cbrt(-std::log(1 - share * (1 - std::exp(-wiebe))) / wiebe);
}

double knock_integral(const EndGas& charge) noexcept {
    ++evaluated;
    static const double judged = part_at_burnt(judged_at);
    const double g = charge.exponent;
    const double last = charge.burn_start + judged * charge.burn_duration;
    const Nodes log_volume = volume(charge.compression_ratio, last).log();
    // p v^g = p1 (1 + (g - 1) q/(R T1) times the integral of v^(g-1) over the burnt share).
    const Nodes worked = running(((g - 1) * log_volume).exp(), burnt(charge, last));
    const double heating = (g - 1) * charge.heat / (charge.gas_constant * charge.temperature);
    const Nodes log_pressure = (1 + heating * worked).log() - g * log_volume;
    const double start =
        pressure_exponent * std::log(charge.pressure / media::constants::isa_pressure);
    const Nodes rate = (start + pressure_exponent * log_pressure -
                        activation / charge.temperature * (-(g - 1) / g * log_pressure).exp())
                           .exp();
    return (grid().weight * rate).sum() / (delay_at_100 * std::max(charge.engine_speed, slowest));
}

double octane_of_integral(double integral) noexcept {
    return 100 * std::pow(integral, 1 / octane_exponent);
}

long knock_integrals() noexcept { return evaluated; }

}  // namespace windwall::engine
