#include "windwall/media/vapour_pressure.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

constexpr double coldest = 200, hottest = 473.15;  // K

/// ln(p/pc) = (a t + b t^1.5 + c t^3 + d t^6) Tc/T with t = 1 - T/Tc.
struct Wagner {
    double a, b, c, d, critical_pressure, critical_temperature;

    Saturation at(double T) const {
        const double t = 1 - T / critical_temperature;
        const double root = std::sqrt(t), t2 = t * t, t5 = t2 * t2 * t;
        const double sum = t * (a + b * root + c * t2 + d * t5);
        const double slope = a + 1.5 * b * root + 3 * c * t2 + 6 * d * t5;
        return {critical_pressure * std::exp(sum * critical_temperature / T),
                -(sum * critical_temperature / T + slope) / T};
    }
};

// McGarry, Ind. Eng. Chem. Process Des. Dev. 22 (1983) 313, as carried by the chemicals package.
constexpr Wagner methanol{-8.54796, 0.769817, -3.1085, 1.54481, 8085050, 512.64};
constexpr Wagner ethanol{-8.51838, 0.341626, -5.73683, 8.32581, 6130870, 513.92};

/// Hyland and Wexler 1983, over liquid.
Saturation water_at(double T) {
    constexpr double a = -5.8002206e3, b = 1.3914993, c = -4.8640239e-2, d = 4.1764768e-5,
                     e = -1.4452093e-8, g = 6.5459673;
    return {std::exp(a / T + b + T * (c + T * (d + T * e)) + g * std::log(T)),
            (g - a / T) / T + c + T * (2 * d + T * 3 * e)};
}

// Reid vapour pressure of summer petrol, the upper end of class A of EN 228 (45 to 60 kPa), and the
// slope that follows from a latent heat of 349 kJ/kg and 106 g/mol.
constexpr double reid_pressure = 60e3;        // Pa
constexpr double reid_temperature = 310.928;  // K, 100 degF
constexpr double petrol_slope = 4448;         // K

constexpr VanLaar methanol_in_water{0.86, 0.56};
constexpr VanLaar ethanol_in_water{1.6798, 0.9227};

Saturation saturation_between(Vapour liquid, double T) {
    switch (liquid) {
        case Vapour::water: return water_at(T);
        case Vapour::methanol: return methanol.at(T);
        case Vapour::ethanol: return ethanol.at(T);
        case Vapour::petrol: break;
    }
    return {petrol_pressure(T, 0), petrol_slope / (T * T)};
}

}  // namespace

double petrol_pressure(double temperature, double evaporated) noexcept {
    const double T = std::clamp(temperature, coldest, hottest);
    return reid_pressure *
           std::exp(petrol_slope * (1 / reid_temperature - 1 / T) - petrol_fall * evaporated);
}

Saturation saturation(Vapour liquid, double temperature) noexcept {
    const double T = std::clamp(temperature, coldest, hottest);
    Saturation held = saturation_between(liquid, T);
    if (T != temperature) held.growth = 0;
    return held;
}

double vapour_pressure(Vapour liquid, double temperature) noexcept {
    return saturation(liquid, temperature).pressure;
}

VanLaar alcohol_in_water(double methanol_moles, double ethanol_moles) noexcept {
    const double both = methanol_moles + ethanol_moles;
    const double e = both > 0 ? ethanol_moles / both : 0;
    return {(1 - e) * methanol_in_water.alcohol + e * ethanol_in_water.alcohol,
            (1 - e) * methanol_in_water.water + e * ethanol_in_water.water};
}

Activity log_activity(const VanLaar& pair, double alcohol_share) noexcept {
    const double x = std::clamp(alcohol_share, 0.0, 1.0);
    const auto& [A, B] = pair;
    const double weight = A * x + B * (1 - x);
    const double to_alcohol = B * (1 - x) / weight, to_water = A * x / weight;
    return {A * to_alcohol * to_alcohol, B * to_water * to_water};
}

Activity log_activity_slope(const VanLaar& pair, double alcohol_share) noexcept {
    const double x = std::clamp(alcohol_share, 0.0, 1.0);
    const auto& [A, B] = pair;
    const double weight = A * x + B * (1 - x);
    const double common = 2 * A * A * B * B / (weight * weight * weight);
    return {-common * (1 - x), common * x};
}

Activity activity(const VanLaar& pair, double alcohol_share) noexcept {
    const Activity logarithm = log_activity(pair, alcohol_share);
    return {std::exp(logarithm.alcohol), std::exp(logarithm.water)};
}

}  // namespace windwall::media
