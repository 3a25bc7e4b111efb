#include "windwall/scenario/observation.hpp"

#include "windwall/fields/read.hpp"

namespace windwall::scenario {
namespace {

constexpr std::size_t most_observations = 64;

}  // namespace

std::span<const fields::Row> Observation::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        choice("what", at<&Observation::what>, "What the vehicle was doing", {}, Need::required),
        optional("speed", "v", at<&Observation::speed>, fields::speed("km/h"), {1, 600},
                 "Speed over the ground"),
        whole(optional("gear", "g", at<&Observation::gear>, number(), {1, 24},
                       "Gear, counted from 1")),
        optional("engine_speed", "N", at<&Observation::engine_speed>, angular_speed("rpm"),
                 {200, 20000}, "Engine speed"),
        optional("boost", "p_m - p_a", at<&Observation::boost>, gauge_pressure("kPa"), {-90, 300},
                 "Pressure in the manifold above the local air"),
        optional("charge_temperature", "T_m", at<&Observation::charge_temperature>,
                 temperature("degC"), {-20, 250}, "Temperature of the charge in the manifold"),
        choice("knock", at<&Observation::knock>, "What was heard of knock",
               "nobody listened, unless stated"),
        optional("retard", "d", at<&Observation::retard>, angle("deg"), {-20, 60},
                 "Spark that was driven, crank angle after that of best torque: without it nobody "
                 "can tell what was heard of knock from a late spark"),
    };
    return table;
}

std::optional<fields::Violation> Observation::check() const {
    if (speed || engine_speed || boost || charge_temperature || knock != Heard::not_listened_for)
        return std::nullopt;
    return fields::Violation{"what",
                             "nothing was observed: state a speed, a pressure, a "
                             "temperature or what was heard of knock"};
}

std::vector<Observation> read_observations(const fields::Cursor& list) {
    std::vector<Observation> read;
    if (!fields::is_list_of("observations", most_observations, list)) return read;
    for (std::size_t at = 0; at < list.size(); ++at)
        fields::read(fields::group_type<Observation>, &read.emplace_back(), list.entry(at));
    return read;
}

}  // namespace windwall::scenario
