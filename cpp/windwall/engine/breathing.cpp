#include "windwall/engine/breathing.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {

double Breathing::speed_share(double engine_speed, double usual_best) const noexcept {
    const double best = best_speed.value_or(usual_best);
    const double away = engine_speed / best - 1;
    return 1 / (1 + fall_off * away * away);
}

double filling_temperature_share(double charge_temperature, double reference_temperature) noexcept {
    return std::sqrt(charge_temperature / reference_temperature);
}

double ideal_volumetric_efficiency(double compression_ratio, double pressure_ratio,
                                   double gamma) noexcept {
    // Below this the linear law, outside its range, runs towards zero: follow it by an
    // exponential of the same value and slope, which never becomes negative.
    constexpr double lowest_linear = 0.3;
    const double swept = compression_ratio - 1;
    const double linear =
        compression_ratio / swept - (pressure_ratio + gamma - 1) / (gamma * swept);
    if (linear >= lowest_linear) return linear;
    return lowest_linear * std::exp(linear / lowest_linear - 1);
}

std::span<const fields::Row> Breathing::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default(
            "peak_efficiency", "e_v", at<&Breathing::peak_efficiency>, number(), {0.3, 1.3}, 0.07,
            "Volumetric efficiency at the best speed, with intake and exhaust at one pressure",
            "worked back from published torque: industrial 0.75 to 0.80, two-valve motorcycle "
            "0.86, tuned 0.95 to 1.05")
            .chosen_by("design"),
        optional("best_speed", "N_v", at<&Breathing::best_speed>, angular_speed("rpm"),
                 {300, 20000},
                 "Engine speed of the best filling, near that of peak torque; 0.7 of the rev limit "
                 "where not stated")
            .chosen_by("design"),
        with_default(
            "fall_off", "a_v", at<&Breathing::fall_off>, number(), {0, 1}, 0.05,
            "How fast filling falls beside the best speed: the share lost is this times the "
            "square of the relative distance",
            "estimate, 0.15 to 0.25")
            .chosen_by("design"),
        with_default("reference_temperature", "T_v", at<&Breathing::reference_temperature>,
                     temperature("degC"), {-20, 80}, 0,
                     "Charge temperature at which the peak efficiency holds", "SAE J1349, 25 degC"),
        with_default(
            "wall_heating", "h_w", at<&Breathing::wall_heating>, number(), {0, 0.5}, 0.07,
            "Kelvins by which the charge is warmed before the intake closes, per kelvin that the "
            "head is hotter than the charge",
            "no source; 35 K at a head of 200 degC, where 42 K are told of a radial engine"),
        with_default("reference_head_temperature", "T_hv",
                     at<&Breathing::reference_head_temperature>, temperature("degC"), {60, 350}, 0,
                     "Head temperature at which the peak efficiency holds",
                     "a reference, that of the cooling's known point")
            .chosen_by("design"),
        optional(
            "stated_efficiency", "e_vs", at<&Breathing::stated_efficiency>, number(), {0.2, 1.5},
            "A measured volumetric efficiency, referred to the gas in the manifold; it replaces "
            "all of this at every speed, pressure and temperature"),
    };
    return table;
}

}  // namespace windwall::engine
