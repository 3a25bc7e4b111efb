#include "windwall/media/humid_air.hpp"

#include "windwall/media/constants.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

using namespace constants;

constexpr double triple_point = 273.16;  // K
constexpr double coldest = 173.15;
constexpr double hottest = 473.15;
constexpr double most_vapour = 0.95;  // of the whole pressure
/// Molar mass of water over that of dry air, from the project's own gases: 0.62196.
constexpr double mass_ratio = molar_mass_water / molar_mass_air;

/// ln p = a/T + b + c T + d T2 + e T3 + f T4 + g ln T, T in K, p in Pa.
struct Wexler {
    double a, b, c, d, e, f, g;

    double logarithm(double T) const {
        return a / T + b + T * (c + T * (d + T * (e + T * f))) + g * std::log(T);
    }
    double slope(double T) const {
        return -a / (T * T) + c + T * (2 * d + T * (3 * e + T * 4 * f)) + g / T;
    }
};

constexpr Wexler over_liquid{-5.8002206e3,  1.3914993, -4.8640239e-2, 4.1764768e-5,
                             -1.4452093e-8, 0,         6.5459673};
constexpr Wexler over_ice{-5.6745359e3, 6.3925247,      -9.677843e-3, 6.2215701e-7,
                          2.0747825e-9, -9.4840240e-13, 4.1635019};

const Wexler& branch(double T) { return T < triple_point ? over_ice : over_liquid; }

}  // namespace

double saturation_pressure(double temperature) noexcept {
    const double T = std::clamp(temperature, coldest, hottest);
    return std::exp(branch(T).logarithm(T));
}

double vapour_pressure(double relative_humidity, double temperature, double pressure) noexcept {
    return std::min(relative_humidity * saturation_pressure(temperature), most_vapour * pressure);
}

double vapour_pressure(double humidity_ratio, double pressure) noexcept {
    return pressure * humidity_ratio / (mass_ratio + humidity_ratio);
}

double humidity_ratio(double relative_humidity, double temperature, double pressure) noexcept {
    const double vapour = vapour_pressure(relative_humidity, temperature, pressure);
    return mass_ratio * vapour / (pressure - vapour);
}

double humid_air_density(double relative_humidity, double temperature, double pressure) noexcept {
    const double vapour = vapour_pressure(relative_humidity, temperature, pressure);
    return dry_air_density(relative_humidity, temperature, pressure) +
           vapour / (gas_constant_water * temperature);
}

double dry_air_density(double relative_humidity, double temperature, double pressure) noexcept {
    const double vapour = vapour_pressure(relative_humidity, temperature, pressure);
    return (pressure - vapour) / (gas_constant_air * temperature);
}

double dew_point(double vapour_pressure) noexcept {
    const double lowest = saturation_pressure(coldest), highest = saturation_pressure(hottest);
    const double target = std::log(std::clamp(vapour_pressure, lowest, highest));
    const Wexler& curve =
        target < std::log(saturation_pressure(triple_point)) ? over_ice : over_liquid;
    // The logarithm is nearly straight in 1/T: Newton in that variable converges from anywhere.
    double T = triple_point;
    for (int step = 0; step < 12; ++step) {
        const double change = (target - curve.logarithm(T)) / (curve.slope(T) * T * T);
        T = 1 / (1 / T - change);
        if (std::abs(change) * T < 1e-13) break;
    }
    return std::clamp(T, coldest, hottest);
}

}  // namespace windwall::media
