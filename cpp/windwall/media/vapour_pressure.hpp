#pragma once
#include "windwall/media/vapour.hpp"

/// What a liquid that travels with the air would fill the air with, and how a mixture holds back.
namespace windwall::media {

/// Saturation pressure of a pure liquid, Pa, at a temperature in K; outside 200 to 473.15 K that of
/// the nearer end. Water: Hyland and Wexler over liquid, also below freezing (supercooled).
/// Methanol and ethanol: Wagner. Petrol: of its first drop, see petrol_pressure.
double vapour_pressure(Vapour liquid, double temperature) noexcept;

/// The same, and how fast its logarithm grows with the temperature.
struct Saturation {
    double pressure;  // Pa
    double growth;    // d ln(pressure)/dT, 1/K; none where the pressure is that of an end
};
Saturation saturation(Vapour liquid, double temperature) noexcept;

/// Vapour pressure of petrol, Pa, of which a share 0 to 1 has evaporated: 60 kPa at 37.8 degC when
/// fresh (Reid), falling as the light ends leave. Class A of EN 228, for summer, has 45 to 60 kPa.
double petrol_pressure(double temperature, double evaporated) noexcept;
/// Decay of the logarithm of petrol's vapour pressure from the first drop to the last.
inline constexpr double petrol_fall = 3.74;

/// Van Laar's two parameters of an alcohol (1) in water (2).
struct VanLaar {
    double alcohol;  // ln of the activity coefficient of a trace of alcohol in water
    double water;    // of a trace of water in alcohol
};

/// Methanol 0.86 and 0.56 (Journal of Thermodynamics 2012, 641251, table 4), ethanol 1.6798 and
/// 0.9227 (Perry's Chemical Engineers' Handbook). Two alcohols at once: averaged by their moles.
VanLaar alcohol_in_water(double methanol_moles, double ethanol_moles) noexcept;

/// Activity coefficients at a mole share of alcohol in the liquid, 0 to 1.
struct Activity {
    double alcohol;
    double water;
};
Activity activity(const VanLaar& pair, double alcohol_share) noexcept;
/// Their logarithms, and the slopes of these over the share.
Activity log_activity(const VanLaar& pair, double alcohol_share) noexcept;
Activity log_activity_slope(const VanLaar& pair, double alcohol_share) noexcept;

}  // namespace windwall::media
