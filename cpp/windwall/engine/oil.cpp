#include "windwall/engine/oil.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double coldest = 253.15, hottest = 523.15;  // K, of oil in an engine that runs
constexpr double cooling_exponent = 0.58;             // as for the head
constexpr double heat_capacity = 2000;  // J/(kg K), 1900 to 2200 for mineral oil; common practice
constexpr double least_rise = 1;        // K, at the known point

double thickness(double temperature) noexcept {
    const double fahrenheit = std::clamp(temperature, coldest, hottest) * 1.8 - 459.67;
    return 1360 / (fahrenheit + 95);
}

}  // namespace

double oil_viscosity_ratio(double temperature, double other_temperature) noexcept {
    return std::exp(thickness(temperature) - thickness(other_temperature));
}

double Oil::equilibrium(double heat_share, double flow_share, double sink_temperature,
                        double known_sink_temperature) const noexcept {
    if (temperature) return *temperature;
    const double rise = std::max(0.0, known_temperature - known_sink_temperature) * heat_share *
                        std::pow(flow_share, -cooling_exponent);
    return std::clamp(sink_temperature + rise, coldest, hottest);
}

media::LumpedNode Oil::node(double heat, double known_heat, double flow_share,
                            double sink_temperature, double known_sink_temperature) const noexcept {
    const double rise = std::max(least_rise, known_temperature - known_sink_temperature);
    const double to_sink = known_heat / rise * std::pow(flow_share, cooling_exponent);
    return {"oil", mass * heat_capacity, heat, 0, 0, to_sink, sink_temperature, temperature};
}

double Oil::friction_share(double oil_temperature) const noexcept {
    return std::exp(viscosity_exponent * (thickness(oil_temperature) - thickness(hot_temperature)));
}

std::span<const fields::Row> Oil::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        optional("temperature", "T_o", at<&Oil::temperature>, fields::temperature("degC"),
                 {-20, 200},
                 "Temperature of the oil on the day of the run; at equilibrium where not stated"),
        with_default("known_temperature", "T_o1", at<&Oil::known_temperature>,
                     fields::temperature("degC"), {40, 160}, 10,
                     "Temperature of the oil where that of the head was known", "common practice"),
        with_default("wall_share", "q_o", at<&Oil::wall_share>, number(), {0, 0.5}, 0.03,
                     "Share of the heat to the walls that the oil takes, by pistons and barrel",
                     "estimate"),
        with_default("viscosity_exponent", "n_o", at<&Oil::viscosity_exponent>, number(), {0, 0.6},
                     0.1, "Exponent of the oil's viscosity in the friction of oil films",
                     "between 0.5 of a full film and none of rubbing metal; no source for the "
                     "number"),
        with_default("hot_temperature", "T_of", at<&Oil::hot_temperature>,
                     fields::temperature("degC"), {60, 150}, 0,
                     "Temperature of the oil at which the friction constants hold",
                     "a warm engine; common practice"),
        with_default("mass", "m_o", at<&Oil::mass>, fields::mass("kg"), {0.1, 50}, 1,
                     "Mass of the oil, which has to warm up", "about two litres; common practice"),
    };
    return table;
}

}  // namespace windwall::engine
