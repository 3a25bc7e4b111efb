#include "windwall/engine/rated.hpp"

namespace windwall::engine {

std::span<const fields::Row> Rated::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        optional("torque", "M_r", at<&Rated::torque>, fields::torque("N m"), {0.5, 2000},
                 "Torque that the maker printed, with its ± where that is known; else 2.5 %"),
        optional("torque_speed", "N_M", at<&Rated::torque_speed>, angular_speed("rpm"),
                 {300, 20000}, "Engine speed of that torque"),
        optional("power", "P_r", at<&Rated::power>, fields::power("kW"), {0.1, 1000},
                 "Power that the maker printed, with its ± where that is known; else 2.5 %"),
        optional("power_speed", "N_P", at<&Rated::power_speed>, angular_speed("rpm"), {300, 20000},
                 "Engine speed of that power"),
        choice("as", at<&Rated::as>,
               "net, with silencer and all that is sold with it; gross, without them",
               "common practice, figures of cars and motorcycles since the 1970s are net"),
        with_default("temperature", "T_r", at<&Rated::temperature>, fields::temperature("degC"),
                     {-10, 50}, 0, "Air temperature of the day that the figures are corrected to",
                     "SAE J1349 and ISO 1585"),
        with_default("pressure", "p_r", at<&Rated::pressure>, absolute_pressure("kPa"), {60, 110},
                     0, "Dry air pressure of that day", "SAE J1349 and ISO 1585"),
        with_default("intake_drop", "dp_r", at<&Rated::intake_drop>, pressure_difference("kPa"),
                     {0, 20}, 1.5,
                     "Pressure lost before the intake valve of the stock engine, without a blower, "
                     "at the speed of full power; a gross figure is given half of it",
                     "filter and carburettor; no source"),
        required("compression_ratio", "r_r", at<&Rated::compression_ratio>, number(), {4, 16},
                 "Compression ratio of the stock engine"),
        optional("research_octane", "RON_r", at<&Rated::research_octane>, number(), {40, 130},
                 "Research octane number of the fuel that the maker asks for"),
        optional("motor_octane", "MON_r", at<&Rated::motor_octane>, number(), {40, 130},
                 "Motor octane number of that fuel; 9 less than research where not stated"),
    };
    return table;
}

std::optional<fields::Violation> Rated::check() const {
    if (torque.has_value() != torque_speed.has_value())
        return fields::Violation{"torque", "torque and torque_speed are stated together"};
    if (power.has_value() != power_speed.has_value())
        return fields::Violation{"power", "power and power_speed are stated together"};
    if (!torque && !power && !research_octane)
        return fields::Violation{"torque",
                                 "a torque, a power or the octane number of a fuel is expected"};
    return std::nullopt;
}

}  // namespace windwall::engine
