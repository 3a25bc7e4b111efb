#include "windwall/solve/results/part_results.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> GasResult::rows() {
    static constexpr Row table[] = {
        result("pressure", "p", at<&GasResult::pressure>, absolute_pressure("kPa"),
               "Absolute pressure of the gas"),
        result("temperature", "T", at<&GasResult::temperature>, fields::temperature("degC"),
               "Temperature of the gas"),
        result("flow", "m", at<&GasResult::flow>, mass_flow("g/s"),
               "Gas that passes, air and vapour"),
        result("liquid", "m_l", at<&GasResult::liquid>, mass_flow("g/s"),
               "Liquid that the gas carries, as drops and along the wall"),
    };
    return table;
}

std::span<const Row> ResistedResult::rows() {
    static constexpr Row table[] = {
        group("inlet", at<&ResistedResult::inlet>, "The gas before the part"),
        group("outlet", at<&ResistedResult::outlet>, "The gas behind the part"),
        result("pressure_drop", "dp", at<&ResistedResult::pressure_drop>,
               pressure_difference("kPa"), "Pressure lost in the part"),
        result("heat_given_off", "Q", at<&ResistedResult::heat_given_off>, power("W"),
               "Heat the gas leaves in the part"),
    };
    return table;
}

std::span<const Row> SprayedResult::rows() {
    static constexpr Row table[] = {
        group("inlet", at<&SprayedResult::inlet>, "The gas before the nozzle"),
        group("outlet", at<&SprayedResult::outlet>, "The gas behind the nozzle"),
        result("liquid_flow", "m_l", at<&SprayedResult::liquid_flow>, mass_flow("g/s"),
               "Liquid put into the charge"),
        result("siphoned", "m_v", at<&SprayedResult::siphoned>, mass_flow("g/s"),
               "Of it, drawn by vacuum while the pump rests"),
        result("pressure_difference", "dp", at<&SprayedResult::pressure_difference>,
               fields::pressure_difference("bar"), "Across the nozzle while the pump runs"),
        result("drop_diameter", "d_32", at<&SprayedResult::drop_diameter>, length("mm"),
               "Sauter mean diameter of the spray"),
        result("cycle_spread", "s_c", at<&SprayedResult::cycle_spread>, percent(),
               "By how much what one intake stroke catches of a pulsed spray differs from the "
               "next, one standard deviation, stirred in the vessels on its way and nowhere else"),
    };
    return table;
}

std::span<const Row> LeakedResult::rows() {
    static constexpr Row table[] = {
        group("inlet", at<&LeakedResult::inlet>, "The gas before the hole"),
        group("outlet", at<&LeakedResult::outlet>, "The gas behind the hole"),
        result("lost", "m_h", at<&LeakedResult::lost>, mass_flow("g/s"),
               "Gas lost to the weather; negative where it is drawn in"),
    };
    return table;
}

std::span<const Row> MeteredResult::rows() {
    static constexpr Row table[] = {
        group("inlet", at<&MeteredResult::inlet>, "The gas before the valve"),
        group("outlet", at<&MeteredResult::outlet>, "The gas behind the valve"),
        result("pressure_drop", "dp", at<&MeteredResult::pressure_drop>, pressure_difference("kPa"),
               "Pressure lost in the valve"),
        result("opening", "o", at<&MeteredResult::opening>, percent(),
               "Share of the plate's travel"),
    };
    return table;
}

std::span<const Row> BranchedResult::rows() {
    static constexpr Row table[] = {
        group("inlet", at<&BranchedResult::inlet>, "The path's gas before the bypass"),
        group("outlet", at<&BranchedResult::outlet>, "The path's gas behind the bypass"),
        result("returned", "m_b", at<&BranchedResult::returned>, mass_flow("g/s"),
               "Gas that goes back to the blower's inlet; negative where it runs forward"),
        result("opening", "o", at<&BranchedResult::opening>, percent(),
               "Share of the valve's travel"),
    };
    return table;
}

std::span<const Row> CompressedResult::rows() {
    static constexpr Row table[] = {
        group("inlet", at<&CompressedResult::inlet>, "The gas before the blower"),
        group("outlet", at<&CompressedResult::outlet>, "The gas behind the blower"),
        result("pressure_ratio", "r", at<&CompressedResult::pressure_ratio>, number(),
               "Outlet over inlet pressure"),
        result("load_ratio", "r_d", at<&CompressedResult::load_ratio>, number(),
               "Pressure ratio that makes the same difference of pressures from the local air, "
               "which is what loads rotors and bearings"),
        result("rotor_speed", "N", at<&CompressedResult::rotor_speed>, angular_speed("rpm"),
               "Speed of the driven rotor"),
        result("leak_share", "x_L", at<&CompressedResult::leak_share>, percent(),
               "Share of what the rotors carry that leaks back"),
        result("efficiency", "eta_is", at<&CompressedResult::efficiency>, percent(),
               "Work of an ideal compression over the work at the shaft"),
        result("inlet_depression", "p_a - p_1", at<&CompressedResult::inlet_depression>,
               pressure_difference("kPa"), "Vacuum at the inlet seals, against the local air"),
        result("shaft_power", "P", at<&CompressedResult::shaft_power>, power("W"),
               "Power at the rotor shaft"),
        result("crank_power", "P_c", at<&CompressedResult::crank_power>, power("W"),
               "Power taken from the crank, belt included"),
    };
    return table;
}

}  // namespace windwall::solve
