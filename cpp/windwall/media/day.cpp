#include "windwall/media/day.hpp"

#include "windwall/media/humid_air.hpp"
#include "windwall/media/standard_atmosphere.hpp"

namespace windwall::media {

std::span<const fields::Row> Day::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("temperature", "T_a", at<&Day::temperature>, fields::temperature("degC"),
                 {-40, 60}, "Air temperature in the shade"),
        optional("pressure", "p_a", at<&Day::pressure>, absolute_pressure("kPa"), {45, 110},
                 "Barometer at the place, not reduced to sea level; instead of altitude"),
        optional("altitude", "z", at<&Day::altitude>, length("m"), {-430, 6000},
                 "Height of the place above sea level; instead of pressure"),
        with_default("sea_level_pressure", "p_0", at<&Day::sea_level_pressure>,
                     absolute_pressure("kPa"), {87, 109}, 1,
                     "Barometer of the weather report, reduced to sea level; with altitude",
                     "ISO 2533 standard atmosphere"),
        with_default("relative_humidity", "phi", at<&Day::relative_humidity>, percent(), {0, 100},
                     20, "Relative humidity at that temperature", "common practice"),
        with_default("headwind", "v_w", at<&Day::headwind>, speed("m/s"), {-20, 20}, 1,
                     "Wind against the direction of travel; a tailwind is negative",
                     "calm air, chosen by the project"),
    };
    return table;
}

std::optional<fields::Violation> Day::check() const {
    if (pressure && altitude)
        return fields::Violation{"pressure", "pressure and altitude exclude each other: give one"};
    if (!pressure && !altitude)
        return fields::Violation{"pressure", "either pressure or altitude is needed"};
    return std::nullopt;
}

double Day::station_pressure() const noexcept {
    if (pressure) return *pressure;
    return media::station_pressure(altitude.value_or(0), sea_level_pressure);
}

double Day::humidity_ratio() const noexcept {
    return media::humidity_ratio(relative_humidity, temperature, station_pressure());
}

double Day::air_density() const noexcept {
    return humid_air_density(relative_humidity, temperature, station_pressure());
}

double Day::dry_air_density() const noexcept {
    return media::dry_air_density(relative_humidity, temperature, station_pressure());
}

Stream Day::air(double dry_air) const noexcept {
    return ambient_stream(station_pressure(), temperature, humidity_ratio(), dry_air);
}

}  // namespace windwall::media
