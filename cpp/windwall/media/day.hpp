#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::media {

/// The air a vehicle runs in, and the wind against it.
struct Day {
    static constexpr std::string_view kind = "day";
    static constexpr std::string_view description =
        "Weather and height of the place, and the wind.";

    double temperature = 288.15;
    std::optional<double> pressure;
    std::optional<double> altitude;
    double sea_level_pressure = 101325;
    double relative_humidity = 0.5;
    double headwind = 0;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;

    /// What a barometer at the place reads, Pa.
    double station_pressure() const noexcept;
    /// kg of vapour per kg of dry air.
    double humidity_ratio() const noexcept;
    /// Of the moist air, kg/m3: what drag feels.
    double air_density() const noexcept;
    /// kg of dry air per m3 of moist air: what an engine burns with.
    double dry_air_density() const noexcept;
    /// The air as it enters the charge path, with this much dry air in kg/s.
    Stream air(double dry_air) const noexcept;
};

}  // namespace windwall::media
