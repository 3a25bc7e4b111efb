#include "windwall/media/vapour_pressure.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

constexpr double coldest = 200, hottest = 473.15;  // K

/// ln(p/pc) = (a t + b t^1.5 + c t^3 + d t^6) Tc/T with t = 1 - T/Tc.
struct Wagner {
    double a, b, c, d, critical_pressure, critical_temperature;

    double pressure(double T) const {
        const double t = 1 - T / critical_temperature;
        const double t3 = t * t * t;
        const double sum = a * t + b * t * std::sqrt(t) + c * t3 + d * t3 * t3;
        return critical_pressure * std::exp(sum * critical_temperature / T);
    }
};

// McGarry, Ind. Eng. Chem. Process Des. Dev. 22 (1983) 313, as carried by the chemicals package.
constexpr Wagner methanol{-8.54796, 0.769817, -3.1085, 1.54481, 8085050, 512.64};
constexpr Wagner ethanol{-8.51838, 0.341626, -5.73683, 8.32581, 6130870, 513.92};

/// Hyland and Wexler 1983, over liquid.
double water_pressure(double T) {
    return std::exp(-5.8002206e3 / T + 1.3914993 +
                    T * (-4.8640239e-2 + T * (4.1764768e-5 - 1.4452093e-8 * T)) +
                    6.5459673 * std::log(T));
}

// From memory, to be confirmed: Reid vapour pressure of summer petrol, and a slope that belongs to
// its latent heat of 349 kJ/kg and 106 g/mol.
constexpr double reid_pressure = 60e3;        // Pa
constexpr double reid_temperature = 310.928;  // K, 100 degF
constexpr double petrol_slope = 4448;         // K

constexpr VanLaar methanol_in_water{0.86, 0.56};
constexpr VanLaar ethanol_in_water{1.6798, 0.9227};

}  // namespace

double petrol_pressure(double temperature, double evaporated) noexcept {
    const double T = std::clamp(temperature, coldest, hottest);
    return reid_pressure *
           std::exp(petrol_slope * (1 / reid_temperature - 1 / T) - petrol_fall * evaporated);
}

double vapour_pressure(Vapour liquid, double temperature) noexcept {
    const double T = std::clamp(temperature, coldest, hottest);
    switch (liquid) {
        case Vapour::water: return water_pressure(T);
        case Vapour::methanol: return methanol.pressure(T);
        case Vapour::ethanol: return ethanol.pressure(T);
        case Vapour::petrol: break;
    }
    return petrol_pressure(T, 0);
}

VanLaar alcohol_in_water(double methanol_moles, double ethanol_moles) noexcept {
    const double both = methanol_moles + ethanol_moles;
    const double e = both > 0 ? ethanol_moles / both : 0;
    return {(1 - e) * methanol_in_water.alcohol + e * ethanol_in_water.alcohol,
            (1 - e) * methanol_in_water.water + e * ethanol_in_water.water};
}

Activity activity(const VanLaar& pair, double alcohol_share) noexcept {
    const double x = std::clamp(alcohol_share, 0.0, 1.0);
    const auto& [A, B] = pair;
    const double weight = A * x + B * (1 - x);
    const double to_alcohol = B * (1 - x) / weight, to_water = A * x / weight;
    return {std::exp(A * to_alcohol * to_alcohol), std::exp(B * to_water * to_water)};
}

}  // namespace windwall::media
