#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

/// What must be met beside a pressure before a pump runs. Each bound says on which side of it the
/// pump runs; all that are stated must be met.
struct Trigger {
    static constexpr std::string_view description =
        "What must be met beside the pressure before the pump runs; all that is stated.";

    std::optional<double> pedal_above;               // share of its travel
    std::optional<double> pedal_below;               // likewise
    std::optional<double> charge_temperature_above;  // K, before the nozzle
    std::optional<double> charge_temperature_below;
    std::optional<double> engine_speed_above;  // rad/s
    std::optional<double> engine_speed_below;

    /// How far the bound that is met least is met, in widths of its step: 0 where it begins to be,
    /// 1 from where it is in full; 1 without a bound.
    double margin(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    /// Share 0 to 1 of the pump that all bounds let run, without a corner.
    double share(const media::Stream& in, const Surroundings& surroundings) const noexcept;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

}  // namespace windwall::charge
