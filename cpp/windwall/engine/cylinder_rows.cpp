#include "windwall/engine/cylinder.hpp"

namespace windwall::engine {

std::span<const fields::Row> Cylinder::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        whole(required("cylinders", "n", at<&Cylinder::cylinders>, number(), {1, 12},
                       "Number of cylinders")),
        required("bore", "B", at<&Cylinder::bore>, length("mm"), {20, 160}, "Bore of a cylinder"),
        required("stroke", "S", at<&Cylinder::stroke>, length("mm"), {20, 160},
                 "Stroke of a piston"),
        required("compression_ratio", "r", at<&Cylinder::compression_ratio>, number(), {4, 16},
                 "Volume above the piston at the bottom over that at the top"),
        required("rev_limit", "N_m", at<&Cylinder::rev_limit>, angular_speed("rpm"), {1000, 20000},
                 "Engine speed that is never passed"),
        with_default("lambda", "l", at<&Cylinder::lambda>, number(), {0.65, 1.4}, 0.04,
                     "Air over what the fuel needs, at full load", "common practice, 0.85 to 0.90"),
        optional(
            "head_temperature", "T_h", at<&Cylinder::head_temperature>, temperature("degC"),
            {20, 350},
            "Temperature of the cylinder head as it was measured on this engine, at the engine and "
            "road speed, manifold pressure, charge and air that cooling names as known; from there "
            "it moves with all of them"),
        with_default(
            "octane_sensitivity_weight", "K", at<&Cylinder::octane_sensitivity_weight>, number(),
            {-1, 1.5}, 0.4,
            "Weight of the motor method in the fuel's octane index, 0 for the research method "
            "and 1 for the motor method",
            "no source for the value; form of SAE 2017-01-0666"),
        with_default("idle_speed", "N_i", at<&Cylinder::idle_speed>, angular_speed("rpm"),
                     {300, 3000}, 250, "Engine speed at which it idles",
                     "common practice: 800 to 1000 rpm of cars, 1100 to 1400 of motorcycles, up to "
                     "1750 of industrial engines"),
        with_default("inertia", "J", at<&Cylinder::inertia>, fields::inertia("kg m2"), {0, 2},
                     0.005, "Moment of inertia of crank and flywheel",
                     "derived: a flywheel of 2.5 kg, 180 mm across; 0.003 is one of 0.75 kg, 0.02 "
                     "one of 5 kg"),
        group("design", at<&Cylinder::design>, "What a builder knows of the engine at sight"),
        optional_group("rated", at<&Cylinder::rated>,
                       "What its maker printed of the stock engine, before any change"),
        group("valves", at<&Cylinder::valves>, "Valves of one cylinder"),
        group("breathing", at<&Cylinder::breathing>, "How well the cylinders fill"),
        group("combustion", at<&Cylinder::combustion>, "What burning makes of the fuel"),
        group("friction", at<&Cylinder::friction>, "Rubbing of the moving parts"),
        group("exhaust", at<&Cylinder::exhaust>, "Pipes and silencer"),
        group("accessories", at<&Cylinder::accessories>, "What else the crank drives"),
        group("spark", at<&Cylinder::spark>, "How the spark is chosen"),
        group("knock_anchor", at<&Cylinder::knock_anchor>, "Where this engine is known to knock"),
        group("walls", at<&Cylinder::walls>, "Heat to head and barrel"),
        group("cooling", at<&Cylinder::cooling>, "What cools head and oil"),
        group("oil", at<&Cylinder::oil>, "How warm and thick the oil is"),
        group("evaporation", at<&Cylinder::evaporation>,
              "What water and alcohol that arrive as drops do in the cylinder"),
        optional_group("injector", at<&Cylinder::injector>,
                       "Injectors; a carburetted engine has none"),
    };
    return table;
}

}  // namespace windwall::engine
