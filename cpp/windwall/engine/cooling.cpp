#include "windwall/engine/cooling.hpp"

#include "windwall/media/constants.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double charge_exponent = 0.57;
constexpr double cooling_exponent = 0.58;
constexpr double least_charge = 1e-3;   // of the flow at the known point
constexpr double least_cooling = 0.1;   // of the flow at the known point: warm air rises
constexpr double least_difference = 5;  // K, between gas, head and air at the known point
// Of the conductance at the known point, to air: 5 to 8 W/(m2 K) where warm air rises along fins,
// of some 100 where a fan blows; estimate.
constexpr double still_share = 0.06;
constexpr double coldest_gas = 400, hottest_gas = 1300;  // K

}  // namespace

double cooling_ratio_share(double charge_flow_share, double cooling_flow_share) noexcept {
    return std::exp(charge_exponent * std::log(std::max(charge_flow_share, least_charge)) -
                    cooling_exponent * std::log(std::max(cooling_flow_share, least_cooling)));
}

double Cooling::flow_share(const HeadState& here, const HeadState& known) const noexcept {
    if (by == CoolingBy::liquid) return 1;
    const double speed = by == CoolingBy::fan ? here.engine_speed / known.engine_speed
                                              : here.road_speed / known.road_speed;
    return std::max(least_cooling, speed * here.air_density / known.air_density);
}

double Cooling::known_rise(const HeadState& known) const noexcept {
    return std::max(known_head_temperature - sink_temperature(known.air_temperature),
                    least_difference);
}

double Cooling::conductance_ratio(const HeadState& here, const HeadState& known) const noexcept {
    const double known_ratio =
        known_rise(known) /
        std::max(gas_temperature_at(known) - known_head_temperature, least_difference);
    return known_ratio *
           cooling_ratio_share(here.charge_flow / known.charge_flow, flow_share(here, known));
}

double Cooling::gas_temperature_at(const HeadState& here) const noexcept {
    return std::clamp(
        gas_temperature + gas_temperature_shift(here.charge_temperature, here.equivalence_ratio),
        coldest_gas, hottest_gas);
}

double Cooling::head_temperature(const HeadState& here, const HeadState& known) const noexcept {
    return head_between(gas_temperature_at(here), sink_temperature(here.air_temperature),
                        conductance_ratio(here, known));
}

media::LumpedNode Cooling::head_node(const HeadState& here, const HeadState& known,
                                     double known_heat) const noexcept {
    const double to_sink =
        known_heat / known_rise(known) * std::pow(flow_share(here, known), cooling_exponent);
    return {"head",
            head_mass * media::constants::aluminium_heat_capacity,
            0,
            to_sink * conductance_ratio(here, known),
            gas_temperature_at(here),
            to_sink,
            sink_temperature(here.air_temperature),
            std::nullopt,
            only_cools()};
}

double Cooling::still_conductance(double known_heat, double known_temperature) const noexcept {
    const double rise = std::max(known_temperature - known_air_temperature, least_difference);
    return still_share * known_heat / rise;
}

double Cooling::head_in_pull(const HeadState& here, const HeadState& known,
                             double known_heat) const noexcept {
    const media::LumpedNode head = head_node(here, known, known_heat);
    const double through = head.warm_conductance + head.cold_conductance;
    const double rest = head_temperature(here, known);
    const double left = std::exp(-pull_time.value_or(0) * through / head.heat_capacity);
    return rest + left * (temperature_before - rest);
}

std::span<const fields::Row> Cooling::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        choice("by", at<&Cooling::by>,
               "What cools the head: fan, with engine speed; ram_air, with road speed; liquid, "
               "at a stated coolant temperature",
               "small engines carry a fan on the flywheel; common practice"),
        with_default(
            "known_head_temperature", "T_h1", at<&Cooling::known_head_temperature>,
            temperature("degC"), {60, 350}, 15,
            "Head temperature at full throttle at known_engine_speed and known_manifold_pressure",
            "published: 177 to 224 degC of light aircraft, 191 to 204 of karts, 199 to 216 of a "
            "flat "
            "four uphill, 221 and more of a mower with side valves")
            .chosen_by("design"),
        with_default("known_air_temperature", "T_a1", at<&Cooling::known_air_temperature>,
                     temperature("degC"), {-30, 60}, 0, "Air temperature when that was known",
                     "a reference"),
        optional("known_engine_speed", "N_1", at<&Cooling::known_engine_speed>,
                 angular_speed("rpm"), {500, 20000},
                 "Engine speed when that was known; the rev limit where not stated"),
        with_default("known_manifold_pressure", "p_1", at<&Cooling::known_manifold_pressure>,
                     absolute_pressure("kPa"), {20, 400}, 0,
                     "Manifold pressure when that was known", "a reference, no blower"),
        with_default("known_charge_temperature", "T_i1", at<&Cooling::known_charge_temperature>,
                     temperature("degC"), {-40, 250}, 0, "Charge temperature when that was known",
                     "a reference"),
        with_default(
            "known_road_speed", "v_1", at<&Cooling::known_road_speed>, speed("km/h"), {5, 400}, 10,
            "Speed of the air over the vehicle when that was known, for ram_air", "estimate"),
        with_default("warm_air_share", "x_a", at<&Cooling::warm_air_share>, percent(), {0, 100}, 30,
                     "Share of the air that cools the head which is taken from under the bodywork",
                     "a shroud that draws from outside, chosen by the project"),
        optional("pull_time", "t_p", at<&Cooling::pull_time>, time("s"), {0, 3600},
                 "How long the engine has run like this, where the head is not warmed through; as "
                 "after a long pull where not stated"),
        with_default("temperature_before", "T_h0", at<&Cooling::temperature_before>,
                     temperature("degC"), {-20, 300}, 25,
                     "Head temperature when that began, where pull_time is stated",
                     "130 degC of a head that idled or rolled along; no source"),
        with_default("coolant_temperature", "T_c", at<&Cooling::coolant_temperature>,
                     temperature("degC"), {20, 130}, 5,
                     "Temperature of the coolant, held by a thermostat, for liquid",
                     "common practice"),
        with_default(
            "gas_temperature", "T_g", at<&Cooling::gas_temperature>, temperature("degC"),
            {450, 1000}, 60, "Mean temperature of the gas that heats the head",
            "no source; 1150 degF at a fuel-air ratio of 0.08 is quoted of NACA TR 683, which was "
            "not read"),
        with_default("head_mass", "m_h", at<&Cooling::head_mass>, mass("kg"), {0.5, 200}, 4,
                     "Mass of aluminium in all heads and barrels, which has to warm up",
                     "a small air-cooled twin; estimate"),
        with_default("block_mass", "m_b", at<&Cooling::block_mass>, mass("kg"), {0.5, 400}, 6,
                     "Mass of aluminium in crankcase and block, which has to warm up",
                     "a small air-cooled twin; estimate"),
    };
    return table;
}

}  // namespace windwall::engine
