#include "windwall/solve/results/operating_point.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> ManifoldResult::rows() {
    static constexpr Row table[] = {
        result("pressure", "p_m", at<&ManifoldResult::pressure>, absolute_pressure("kPa"),
               "Absolute pressure in the manifold"),
        result("boost", "p_m - p_a", at<&ManifoldResult::boost>, gauge_pressure("kPa"),
               "Pressure in the manifold above the local air"),
        result("temperature", "T_m", at<&ManifoldResult::temperature>, fields::temperature("degC"),
               "Temperature of the charge"),
        result("air_flow", "m_a", at<&ManifoldResult::air_flow>, mass_flow("g/s"),
               "Dry air the engine draws"),
    };
    return table;
}

std::span<const Row> EngineResult::rows() {
    static constexpr Row table[] = {
        result("speed", "N", at<&EngineResult::speed>, angular_speed("rpm"), "Engine speed"),
        result("opening", "o", at<&EngineResult::opening>, percent(),
               "Share of the pedal's travel it is held at, off knock where it must be"),
        result("piston_speed", "S_p", at<&EngineResult::piston_speed>, fields::speed("m/s"),
               "Mean piston speed"),
        result("torque", "T", at<&EngineResult::torque>, fields::torque("N m"),
               "Torque at the flywheel, the blower's share taken off"),
        result("power", "P", at<&EngineResult::power>, fields::power("kW"),
               "Power at the flywheel, the blower's share taken off"),
        result("brake_mean_pressure", "bmep", at<&EngineResult::brake_mean_pressure>,
               pressure_difference("kPa"), "Mean effective pressure of that torque"),
        result("volumetric_efficiency", "eta_v", at<&EngineResult::volumetric_efficiency>,
               percent(), "Gas drawn over the gas that fills the swept volume at the manifold"),
        result("exhaust_pressure", "p_e", at<&EngineResult::exhaust_pressure>,
               absolute_pressure("kPa"), "Pressure behind the exhaust valves"),
        result("fuel_flow", "m_f", at<&EngineResult::fuel_flow>, mass_flow("g/s"), "Fuel burnt"),
        result("lambda", "l", at<&EngineResult::lambda>, number(), "Air over what the fuel needs"),
        result("exhaust_gas_temperature", "T_x", at<&EngineResult::exhaust_gas_temperature>,
               temperature("degC"), "Temperature of the exhaust behind the port"),
        result("heat_to_walls", "Q_w", at<&EngineResult::heat_to_walls>, fields::power("kW"),
               "Heat of the gas to head, barrel and exhaust port"),
        result("head_temperature", "T_h", at<&EngineResult::head_temperature>, temperature("degC"),
               "Temperature of the cylinder head"),
        result("oil_temperature", "T_o", at<&EngineResult::oil_temperature>, temperature("degC"),
               "Temperature of the oil"),
    };
    return table;
}

std::span<const Row> KnockResult::rows() {
    static constexpr Row table[] = {
        result("margin", "M", at<&KnockResult::margin>, number(),
               "Octane numbers the fuel has to spare, in the middle of the band"),
        result("requirement", "ON_req", at<&KnockResult::requirement>, number(),
               "Octane number the engine asks for at this spark"),
        result("fuel_index", "OI", at<&KnockResult::fuel_index>, number(),
               "Octane index of the fuel in this engine"),
        result("retard", "d", at<&KnockResult::retard>, angle("deg"),
               "Spark after the one of best torque"),
        result("probability", "P_k", at<&KnockResult::probability>, percent(),
               "Chance of knock in the band around the margin"),
        result("margin_at_best_spark", "M_0", at<&KnockResult::margin_at_best_spark>, number(),
               "Octane numbers the fuel would have to spare at the spark of best torque and the "
               "engine's own mixture"),
        result("probability_at_best_spark", "P_k0", at<&KnockResult::probability_at_best_spark>,
               percent(), "Chance of knock there"),
        result("retard_left", "d_l", at<&KnockResult::retard_left>, angle("deg"),
               "Crank angle by which the spark may be later still"),
        result("enrichment", "dl", at<&KnockResult::enrichment>, number(),
               "Taken off lambda to hold off knock"),
        result("enrichment_left", "dl_l", at<&KnockResult::enrichment_left>, number(),
               "That may be taken off lambda further"),
        result("integral_requirement", "ON_int", at<&KnockResult::integral_requirement>, number(),
               "Octane number by the ignition delay of the end gas, a second opinion"),
        result("integral_margin", "M_int", at<&KnockResult::integral_margin>, number(),
               "Octane numbers the fuel has to spare by that opinion"),
        result("water_per_fuel", "W/F", at<&KnockResult::water_per_fuel>, number(),
               "Water that is sprayed, by mass of all fuel; its octane is measured to 0.6"),
    };
    return table;
}

std::span<const Row> InjectorResult::rows() {
    static constexpr Row table[] = {
        result("duty", "D", at<&InjectorResult::duty>, percent(),
               "Share of the cycle the injectors are held open"),
        result("pulse_width", "t_i", at<&InjectorResult::pulse_width>, time("ms"),
               "Length of one injection, dead time included"),
        result("pressure_drop", "dp_i", at<&InjectorResult::pressure_drop>,
               pressure_difference("kPa"), "Rail less manifold pressure"),
    };
    return table;
}

std::span<const Row> RoadResult::rows() {
    static constexpr Row table[] = {
        result("speed", "v", at<&RoadResult::speed>, fields::speed("km/h"),
               "Speed over the ground"),
        result("gear", "g", at<&RoadResult::gear>, number(), "Gear, counted from 1"),
        result("ratio", "i", at<&RoadResult::ratio>, number(),
               "Turns of the crank for one turn of the wheels, where nothing slips"),
        result("thrust", "F", at<&RoadResult::thrust>, force("N"), "Thrust of the driven tyres"),
        result("surplus", "F - R", at<&RoadResult::excess_force>, force("N"),
               "Thrust left over to accelerate"),
        result("air", "R_a", at<&RoadResult::air>, force("N"), "Drag of the air"),
        result("rolling", "R_r", at<&RoadResult::rolling>, force("N"), "Rolling resistance"),
        result("grade", "R_g", at<&RoadResult::grade>, force("N"), "Pull of the slope"),
    };
    return table;
}

std::span<const Row> TyreResult::rows() {
    static constexpr Row table[] = {
        result("slip", "s", at<&TyreResult::slip>, percent(), "Share of the wheels' speed lost"),
        result("load", "m_t", at<&TyreResult::load>, mass("kg"), "Mass on one driven tyre"),
    };
    return table;
}

std::span<const Row> OperatingPoint::rows() {
    static constexpr Row table[] = {
        group("manifold", at<&OperatingPoint::manifold>, "The charge"),
        parts("charge_path", at<&OperatingPoint::charge_path>, "Each part of the charge path"),
        group("engine", at<&OperatingPoint::engine>, "The engine"),
        optional_group("knock", at<&OperatingPoint::knock>, "Spark and knock"),
        optional_group("injector", at<&OperatingPoint::injector>, "The injectors"),
        optional_group("road", at<&OperatingPoint::road>, "The road"),
        optional_group("tyres", at<&OperatingPoint::tyres>, "The driven tyres"),
        optional_group("variator", at<&OperatingPoint::variator>,
                       "The belt drive of variable ratio"),
    };
    return table;
}

}  // namespace windwall::solve
