#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// How well the cylinders fill, referred to the density of the gas in the manifold.
struct Breathing {
    static constexpr std::string_view description =
        "How well the cylinders fill, referred to the gas in the manifold.";

    double peak_efficiency = 0.80;
    std::optional<double> best_speed;  // rad/s
    double fall_off = 0.20;
    double reference_temperature = 298.15;  // K
    double wall_heating = 0.20;
    double reference_head_temperature = 473.15;  // K
    std::optional<double> stated_efficiency;

    /// Share of the peak that is left at an engine speed in rad/s. `usual_best` stands in where
    /// no best speed is stated.
    double speed_share(double engine_speed, double usual_best) const noexcept;

    static std::span<const fields::Row> rows();
};

/// Hot charge is heated less by the walls: the square root of SAE J1349. Filling referred to the
/// manifold over that at the reference temperature; both in K.
double filling_temperature_share(double charge_temperature, double reference_temperature) noexcept;

/// Volumetric efficiency of the ideal cycle for exhaust over intake pressure. First law, constant
/// heat capacities, no heat, no overlap; Heywood 1988, equation 6.2, without its reference to
/// ambient air. Stated for ratios of 0.3 to 3; it stays positive for any.
double ideal_volumetric_efficiency(double compression_ratio, double pressure_ratio,
                                   double gamma) noexcept;

/// Filling over that with the head at a reference temperature; all in K. A head hotter than the
/// charge by 1 K warms it by `heating` K before the intake closes.
constexpr double filling_head_share(double charge_temperature, double head_temperature,
                                    double reference_head_temperature, double heating) noexcept {
    const double kept = (1 - heating) * charge_temperature;
    return (kept + heating * reference_head_temperature) / (kept + heating * head_temperature);
}

}  // namespace windwall::engine
