#include "windwall/vehicle/engine_bay.hpp"

namespace windwall::vehicle {

std::span<const fields::Row> EngineBay::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        choice("hood", at<&EngineBay::hood>,
               "Whether the engine is covered: closed, or open as on a stand or with the hood "
               "up, where the warm air rises away and a third of the rise is left",
               "closed, unless stated"),
        with_default(
            "rise", "dT_u", at<&EngineBay::rise>, temperature_difference("K"), {0, 80}, 15,
            "How much warmer than the day the air around the engine is at standstill, with the "
            "hood closed",
            "closed bays of small cars idle 19 to 57 K above the day, air around a small "
            "engine on a stand is 20 to 25 K; owners' and laboratory readings"),
        with_default("halving_speed", "v_u", at<&EngineBay::halving_speed>, speed("km/h"), {5, 300},
                     30, "Speed of the air over the vehicle that halves this rise",
                     "54 % of it left at 72 km/h and 30 % at 88, mean of three places read by "
                     "an owner"),
        with_default("stir", "u_u", at<&EngineBay::stir>, speed("m/s"), {0, 20}, 0.5,
                     "Speed at which the air passes warm walls under the bodywork at "
                     "standstill, stirred by fan and engine; it grows as the rise falls",
                     "0.2 m/s where warm air rises by itself, 2 beside a fan; estimate"),
        with_default("intake_share", "x_u", at<&EngineBay::intake_share>, percent(), {0, 100}, 0,
                     "Share of the intake's air that comes from under the bodywork",
                     "an intake in the open air, chosen by the project"),
        with_default("volume", "V_u", at<&EngineBay::volume>, fields::volume("L"), {20, 5000}, 150,
                     "Volume of the air under the bodywork, which has to warm up", "estimate"),
        with_default("ram_recovery", "k_r", at<&EngineBay::ram_recovery>, percent(), {0, 100}, 0,
                     "Share of the wind's dynamic pressure found at the mouth of the intake",
                     "a mouth that does not face the wind, chosen by the project"),
    };
    return table;
}

}  // namespace windwall::vehicle
