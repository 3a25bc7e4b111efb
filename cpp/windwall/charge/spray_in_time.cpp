#include "windwall/charge/spray_in_time.hpp"

#include <algorithm>

namespace windwall::charge {
namespace {

double eased(const EvaporativeInjection& part, bool on) noexcept {
    return on ? part.hysteresis : 0;
}

}  // namespace

double switch_margin(const EvaporativeInjection& part, bool was_on, const media::Stream& in,
                     const Surroundings& surroundings) noexcept {
    const double other = part.trigger.margin(in, surroundings);
    const auto above = part.above_start(surroundings);
    return above ? std::min(other, (*above + eased(part, was_on)) / part.full_after) : other;
}

bool switched_on(const EvaporativeInjection& part, bool was_on, const media::Stream& in,
                 const Surroundings& surroundings) noexcept {
    return switch_margin(part, was_on, in, surroundings) > 0;
}

double running_wanted(const EvaporativeInjection& part, bool on, const media::Stream& in,
                      const Surroundings& surroundings) noexcept {
    return on ? part.asked(in, surroundings, eased(part, on)) : 0;
}

double running_rate(const EvaporativeInjection& part, double running, double wanted) noexcept {
    return (wanted - running) / part.pump_rise_time;
}

double line_at_rest(const EvaporativeInjection& part, double siphoned) noexcept {
    return part.check_valve || siphoned > 0 ? 1 : 0;
}

double line_fill_rate(const EvaporativeInjection& part, double filled, double flow) noexcept {
    return filled < 1 ? flow / (part.blend_density() * part.line_volume) : 0;
}

}  // namespace windwall::charge
