#include "windwall/charge/trigger.hpp"

#include "windwall/numerics/smooth.hpp"

#include <algorithm>
#include <numbers>

namespace windwall::charge {
namespace {

// From where a bound begins to be met to where it is; chosen by the project, as narrow as switches
// are and wide enough for a balance to be found inside.
constexpr double pedal_width = 0.02;
constexpr double temperature_width = 2;                      // K
constexpr double speed_width = 100 * std::numbers::pi / 30;  // rad/s

/// Calls `take` with how far each bound that is stated is met, in widths.
template <class Take>
void each_bound(const Trigger& asked, const media::Stream& in, const Surroundings& around,
                Take&& take) {
    const auto between = [&](double found, const std::optional<double>& low,
                             const std::optional<double>& high, double width) {
        if (low) take((found - *low) / width);
        if (high) take((*high - found) / width);
    };
    between(around.throttle_opening, asked.pedal_above, asked.pedal_below, pedal_width);
    between(in.temperature, asked.charge_temperature_above, asked.charge_temperature_below,
            temperature_width);
    between(around.engine_speed, asked.engine_speed_above, asked.engine_speed_below, speed_width);
}

}  // namespace

double Trigger::margin(const media::Stream& in, const Surroundings& surroundings) const noexcept {
    double least = 1;
    each_bound(*this, in, surroundings, [&](double met) { least = std::min(least, met); });
    return least;
}

double Trigger::share(const media::Stream& in, const Surroundings& surroundings) const noexcept {
    double share = 1;
    each_bound(*this, in, surroundings, [&](double met) { share *= numerics::smooth_step(met); });
    return share;
}

std::optional<fields::Violation> Trigger::check() const {
    const auto never = [](const std::optional<double>& low, const std::optional<double>& high) {
        return low && high && *low >= *high;
    };
    constexpr const char* sentence = "nothing is above the one and below the other";
    if (never(pedal_above, pedal_below)) return fields::Violation{"pedal_below", sentence};
    if (never(charge_temperature_above, charge_temperature_below))
        return fields::Violation{"charge_temperature_below", sentence};
    if (never(engine_speed_above, engine_speed_below))
        return fields::Violation{"engine_speed_below", sentence};
    return std::nullopt;
}

std::span<const fields::Row> Trigger::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        optional("pedal_above", "o_s", at<&Trigger::pedal_above>, percent(), {0, 98},
                 "Travel of the pedal from where on the pump runs"),
        optional("pedal_below", "o_e", at<&Trigger::pedal_below>, percent(), {2, 100},
                 "Travel of the pedal from where on it rests"),
        optional("charge_temperature_above", "T_s", at<&Trigger::charge_temperature_above>,
                 temperature("degC"), {-40, 250},
                 "Temperature of the charge before the nozzle from where on the pump runs"),
        optional("charge_temperature_below", "T_e", at<&Trigger::charge_temperature_below>,
                 temperature("degC"), {-40, 250},
                 "Temperature of the charge before the nozzle from where on it rests"),
        optional("engine_speed_above", "N_s", at<&Trigger::engine_speed_above>,
                 angular_speed("rpm"), {0, 20000}, "Engine speed from where on the pump runs"),
        optional("engine_speed_below", "N_e", at<&Trigger::engine_speed_below>,
                 angular_speed("rpm"), {100, 20000}, "Engine speed from where on it rests"),
    };
    return table;
}

}  // namespace windwall::charge
