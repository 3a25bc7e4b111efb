#pragma once
#include "windwall/fields/row.hpp"

#include <numbers>
#include <span>
#include <string_view>

namespace windwall::engine {

/// The valves of one cylinder: how wide they are, and when the intake closes.
struct Valves {
    static constexpr std::string_view description = "Valves of one cylinder.";

    double per_side = 1;
    double intake_ratio = 0.46;
    double exhaust_ratio = 0.40;
    double flow_coefficient = 0.35;
    double intake_closing = 45 * std::numbers::pi / 180;  // rad after bottom dead centre
    double flow_loss = 1;

    /// Mean flow area of the open intake valves as a share of the piston's area.
    double intake_area_share() const noexcept {
        return flow_coefficient * per_side * intake_ratio * intake_ratio;
    }

    static std::span<const fields::Row> rows();
};

/// Inlet Mach index Z: speed of the gas in the mean intake valve area over the speed of sound.
constexpr double mach_index(double piston_speed, double intake_area_share,
                            double sound_speed) noexcept {
    return piston_speed / (intake_area_share * sound_speed);
}

/// Filling at a Mach index relative to the best one, 0 to 1, for an intake valve that closes
/// `intake_closing` rad after bottom dead centre. Table for 20, 40, 60 degrees and Z 0.2 to 1.2.
double mach_filling(double mach_index, double intake_closing) noexcept;

}  // namespace windwall::engine
