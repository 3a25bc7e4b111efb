#include "windwall/charge/mapped_compressor.hpp"

#include "windwall/media/equilibrium.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace windwall::charge {
namespace {

constexpr double least_speed = 1;         // rad/s of the rotor; below, it is as good as at rest
constexpr double air_constant = 287.048;  // J/(kg K)
constexpr double coldest = 150, hottest = 1200, room = 200;  // K

/// Outside these the impeller is scrap; the temperature bends so that a solver passes through.
double held(double T) noexcept {
    if (T > hottest) return hottest + room * (T - hottest) / (T - hottest + room);
    return std::max(T, coldest);
}

ImpellerEstimate estimate(const MappedCompressor& part) noexcept {
    return {part.impeller_diameter, part.slip_factor, part.efficiency, part.flow_coefficient,
            part.reference_pressure / (air_constant * part.reference_temperature)};
}

/// The whole work of the impeller goes into gas and liquid; where it would burn, only what is let
/// in. On the way a share of what could evaporate by the outlet does.
void heat(Compression& does, const MappedCompressor& part, const media::Stream& in,
          double outlet_pressure, double work) noexcept {
    const double before = media::enthalpy_per_dry_air(in);
    const double rise = work * (1 + in.vapour_share());
    does.outlet = in;
    does.outlet.pressure = outlet_pressure;
    does.outlet = media::at_enthalpy(does.outlet, before + rise);
    const double free = does.outlet.temperature;
    does.capped = free > hottest || free < coldest;
    double taken = rise;
    if (does.capped) {
        does.outlet.temperature = held(free);
        taken = media::enthalpy_per_dry_air(does.outlet) - before;
    } else if (in.liquid_share() > 0) {
        does.outlet = media::partly_settled(does.outlet, before + rise, part.evaporated_inside);
    }
    does.heat_to_charge = does.indicated_power = in.dry_air * taken;
}

}  // namespace

CharacteristicReading MappedCompressor::read(const media::Stream& in, double rotor_speed,
                                             double outlet_pressure) const noexcept {
    const double theta = in.temperature / reference_temperature;
    const double head =
        isentropic_head(outlet_pressure / in.pressure, in.temperature,
                        in.gas.heat_capacity(in.temperature), in.gas.gamma(in.temperature)) /
        theta;
    const double speed = corrected_speed(std::max(std::abs(rotor_speed), least_speed),
                                         in.temperature, reference_temperature);
    if (map.empty()) {
        const ImpellerEstimate impeller = estimate(*this);
        return read_line([&](double beta) { return impeller.at(speed, beta); }, head);
    }
    const MeasuredMap measured(map, reference_temperature);
    return read_line([&](double beta) { return measured.at(speed, beta); }, head);
}

Compression MappedCompressor::compress(const media::Stream& in, double outlet_pressure,
                                       const Surroundings& surroundings) const noexcept {
    Compression does;
    does.rotor_speed = drive_ratio * surroundings.drive_speed;
    const CharacteristicReading reading = read(in, does.rotor_speed, outlet_pressure);
    const double theta = in.temperature / reference_temperature;
    does.capacity = reading.flow * (in.pressure / reference_pressure) / std::sqrt(theta);
    does.surging = reading.surging;
    does.choked = reading.choked;
    heat(does, *this, in, outlet_pressure, reading.work * theta);
    does.friction_power = std::abs(does.indicated_power) * (1 / mechanical_efficiency - 1);
    does.bearing_loss = does.friction_power;
    does.drive_by_crank(belt_efficiency);
    return does;
}

std::optional<fields::Violation> MappedCompressor::check() const {
    if (map.empty()) return std::nullopt;
    const auto& [speed, flow, ratio] = std::tie(map.column[0], map.column[1], map.column[2]);
    std::size_t in_line = 1;
    for (std::size_t i = 1; i <= speed.size(); ++i) {
        const bool same = i < speed.size() && speed[i] == speed[i - 1];
        if (same && (flow[i] < flow[i - 1] || ratio[i] >= ratio[i - 1])) {
            return fields::Violation{"map",
                                     "Each speed line goes from surge to choke: the flow never "
                                     "falls and the pressure ratio always does. Leave out what "
                                     "lies left of the highest pressure ratio."};
        }
        if (i < speed.size() && speed[i] < speed[i - 1]) {
            return fields::Violation{"map",
                                     "Speed lines are stated from the slowest to the fastest."};
        }
        if (!same && in_line < 2) {
            return fields::Violation{"map", "A speed line has at least two points."};
        }
        in_line = same ? in_line + 1 : 1;
    }
    return std::nullopt;
}

std::span<const fields::Row> MappedCompressor::rows() {
    using namespace fields;
    using C = MappedCompressor;
    static constexpr Column columns[] = {
        {"speed", angular_speed("rpm"), {1000, 400000}, "Corrected speed of the rotor"},
        {"flow", mass_flow("g/s"), {0.1, 2000}, "Corrected flow"},
        {"pressure_ratio", number(), {1.01, 6}, "Outlet over inlet pressure"},
        {"efficiency", number(), {0.2, 0.9}, "Isentropic efficiency"},
    };
    static constexpr Row rows[] = {
        required("drive_ratio", "i", at<&C::drive_ratio>, number(), {1, 40},
                 "Turns of the rotor for each turn of the crankshaft, step-up gear included"),
        required("impeller_diameter", "D_2", at<&C::impeller_diameter>, length("mm"), {20, 300},
                 "Outer diameter of the impeller; without a map it decides what is reached"),
        table("map", at<&C::map>, columns,
              "Speed lines from the slowest to the fastest, each from surge to choke with as many "
              "points as the others; without it the impeller alone is the estimate"),
        with_default("reference_temperature", "T_ref", at<&C::reference_temperature>,
                     temperature("degC"), {0, 40}, 3,
                     "Inlet temperature to which speeds and flows of the map are corrected",
                     "common practice, 25 degC; stated on the map"),
        with_default("reference_pressure", "p_ref", at<&C::reference_pressure>,
                     absolute_pressure("kPa"), {90, 105}, 1,
                     "Inlet pressure to which flows of the map are corrected",
                     "common practice, 100 kPa; stated on the map"),
        with_default("slip_factor", "sigma", at<&C::slip_factor>, number(), {0.5, 1}, 0.08,
                     "Without a map: work of the impeller over the square of its tip speed",
                     "no source; straight blades, swept ones do less"),
        with_default("efficiency", "eta", at<&C::efficiency>, number(), {0.3, 0.9}, 0.06,
                     "Without a map: isentropic efficiency at the design flow", "no source"),
        with_default(
            "flow_coefficient", "phi", at<&C::flow_coefficient>, number(), {0.02, 0.3}, 0.04,
            "Without a map: design flow over inlet density, area of the impeller's disc and tip "
            "speed",
            "no source"),
        with_default(
            "mechanical_efficiency", "eta_m", at<&C::mechanical_efficiency>, number(), {0.7, 1},
            0.03, "Power of the impeller over power at the input of the step-up gear", "no source"),
        with_default("belt_efficiency", "eta_b", at<&C::belt_efficiency>, number(), {0.7, 1}, 0.015,
                     "Power at the compressor's pulley over power at the crankshaft",
                     "0.95 to 0.98 for new, aligned V-belts, a belt maker's notes"),
        with_default("evaporated_inside", "x_e", at<&C::evaporated_inside>, number(), {0, 1}, 0.29,
                     "Of the liquid that could evaporate by the outlet, the share that does",
                     "no source; anything from none to all of it"),
        with_default("rotor_inertia", "J", at<&C::rotor_inertia>, inertia("kg m2"), {0, 0.1}, 2e-5,
                     "Moment of inertia of rotor and step-up gear, referred to the rotor",
                     "derived: an impeller of 0.1 kg whose mass lies 18 mm from its axis"),
        optional("rated_speed", "N_max", at<&C::rated_speed>, angular_speed("rpm"), {10000, 400000},
                 "Highest rotor speed its maker allows")
            .watching("rotor_speed", "rated rotor speed"),
        optional("rated_outlet_temperature", "T_max", at<&C::rated_outlet_temperature>,
                 temperature("degC"), {60, 300}, "Highest outlet temperature its maker allows")
            .watching("outlet/temperature", "rated outlet temperature: rotors grow into the case"),
        optional("rated_pressure_ratio", "r_max", at<&C::rated_pressure_ratio>, number(), {1, 6},
                 "Highest pressure ratio its maker allows, from the local air")
            .watching("load_ratio", "rated pressure ratio, by the difference of pressures"),
    };
    return rows;
}

}  // namespace windwall::charge
