// Every prior of a class of engines, one row each. Where a row names no book it was judged from the
// ranges on the page docs/physics/engine_classes.md, and its sigma is wide.
#include "windwall/engine/class_priors.hpp"
#include "windwall/engine/cylinder.hpp"
#include "windwall/engine/usual.hpp"

#include <cmath>
#include <numbers>

namespace windwall::engine {
namespace {

constexpr Design side_valve{.chamber = Chamber::side_valve};
constexpr Design wedge{.chamber = Chamber::two_valve_wedge};
constexpr Design hemispherical{.chamber = Chamber::two_valve_hemispherical};
constexpr Design pent_roof{.chamber = Chamber::four_valve_pent_roof};
constexpr Design air{.cooling = CooledBy::air};
constexpr Design liquid{.cooling = CooledBy::liquid};
constexpr Design oil_and_air{.cooling = CooledBy::oil_and_air};
constexpr Design work{.duty = Duty::work};
constexpr Design road{.duty = Duty::road};
constexpr Design sport{.duty = Duty::sport};
constexpr Design racing{.duty = Duty::racing};
constexpr Design carburettor{.mixture = MixtureBy::carburettor};
constexpr Design injection{.mixture = MixtureBy::ported_injection};
constexpr Design open{.exhaust = Silencing::open};

constexpr Design muffled_work{.duty = Duty::work, .exhaust = Silencing::muffled};
constexpr Design muffled_road{.duty = Duty::road, .exhaust = Silencing::muffled};
constexpr Design muffled_sport{.duty = Duty::sport, .exhaust = Silencing::muffled};
constexpr Design muffled_racing{.duty = Duty::racing, .exhaust = Silencing::muffled};

constexpr std::string_view valves_of_heads = "no source; Heywood 1988, table 6.1, was not read";
constexpr std::string_view cams = "common practice, no source";
constexpr std::string_view judged = "no source; judged";
constexpr std::string_view flame_paths = "length of the flame's way; no source for the number";
constexpr std::string_view torque_peaks =
    "puts the peak of torque near 43 m/s in the valve, Ricardo, second-hand";
constexpr std::string_view below_the_road = "made to pull at part of its speed; no source";
constexpr std::string_view above_the_road = "fair to 73 m/s, Ricardo, second-hand; judged";
constexpr std::string_view falls_at_full_power =
    "no source; mean pressure a tenth to a seventh lower at full power";

constexpr ClassPrior table[] = {
    {"valves/per_side", side_valve, 1, 0, "by definition"},
    {"valves/per_side", wedge, 1, 0, "by definition"},
    {"valves/per_side", hemispherical, 1, 0, "by definition"},
    {"valves/per_side", pent_roof, 2, 0, "by definition"},

    // Of one valve with the area of all: two of 0.36 are one of 0.51.
    {"valves/intake_ratio", side_valve, 0.40, 0.035, judged},
    {"valves/intake_ratio", wedge, 0.445, 0.02, valves_of_heads},
    {"valves/intake_ratio", hemispherical, 0.505, 0.025, valves_of_heads},
    {"valves/intake_ratio", pent_roof, 0.52, 0.025, valves_of_heads},
    {"valves/intake_ratio", work, -0.035, 0.02, "a fast engine's largest valve is not needed"},
    {"valves/intake_ratio", road, 0, 0.015, "a fast engine's largest valve is not needed"},
    {"valves/intake_ratio", sport, 0.005, 0.015, "the book's are the largest of production"},
    {"valves/intake_ratio", racing, 0.03, 0.02, "up to 0.53 of the bore with upright valves"},
    {"valves/exhaust_ratio", side_valve, 0.37, 0.035, judged},
    {"valves/exhaust_ratio", wedge, 0.365, 0.02, valves_of_heads},
    {"valves/exhaust_ratio", hemispherical, 0.425, 0.025, valves_of_heads},
    {"valves/exhaust_ratio", pent_roof, 0.425, 0.025, valves_of_heads},

    {"valves/intake_closing", work, 40, 8, cams},
    {"valves/intake_closing", road, 48, 8, cams},
    {"valves/intake_closing", sport, 58, 8, cams},
    {"valves/intake_closing", racing, 68, 10, cams},

    {"breathing/peak_efficiency", side_valve, 0.77, 0.06,
     "mean pressures of small engines, a fifth below overhead valves; weak"},
    {"breathing/peak_efficiency", wedge, 0.81, 0.04,
     "no source; judged, 0.8 to 0.9 of the weather"},
    {"breathing/peak_efficiency", hemispherical, 0.875, 0.04,
     "inclined valves permit more flow, Heywood 1988; the number judged"},
    {"breathing/peak_efficiency", pent_roof, 0.91, 0.04,
     "class of 850 to 1200 kPa, of which four valves are the upper part"},
    {"breathing/peak_efficiency", work, -0.06, 0.03, "0.67 measured on a small one against 0.85"},
    {"breathing/peak_efficiency", road, 0.02, 0.03, "the level of its chamber"},
    {"breathing/peak_efficiency", sport, 0.065, 0.03, "tuned pipes; no source for the number"},
    {"breathing/peak_efficiency", racing, 0.12, 0.05, "0.95 to 1.15 of the weather; second-hand"},
    {"breathing/peak_efficiency", carburettor, 0.01, 0.02, "the level of its chamber"},
    {"breathing/peak_efficiency", injection, 0.05, 0.025,
     "no venturi and no heated manifold: 5 % on two racing engines"},

    // Speed of the gas in the intake valve: mean piston speed over the valves' share of the bore.
    // The best filling, were there no losses, lies above the peak of torque by what these take.
    {"breathing/best_speed", work, 33, 8, below_the_road},
    {"breathing/best_speed", road, 66, 11, torque_peaks},
    {"breathing/best_speed", sport, 74, 12, above_the_road},
    {"breathing/best_speed", racing, 82, 13, above_the_road},
    {"breathing/fall_off", work, 0.16, 0.1, "no source; with rubbing a flat curve, as governed"},
    {"breathing/fall_off", road, 0.3, 0.12, falls_at_full_power},
    {"breathing/fall_off", sport, 0.36, 0.12, "no source; the more tuned, the narrower"},
    {"breathing/fall_off", racing, 0.5, 0.12, "no source; the more tuned, the narrower"},

    {"combustion/real_cycle_factor", side_valve, 0.815, 0.04, "much wall, slow flame; judged"},
    {"combustion/real_cycle_factor", wedge, 0.855, 0.03, "two-zone cycles less leakage, 0.80-0.88"},
    {"combustion/real_cycle_factor", hemispherical, 0.87, 0.03,
     "two-zone cycles less leakage, 0.80-0.88"},
    {"combustion/real_cycle_factor", pent_roof, 0.87, 0.025, "a central plug burns faster; judged"},
    {"combustion/burn_duration", side_valve, 75, 12, flame_paths},
    {"combustion/burn_duration", wedge, 62, 9, flame_paths},
    {"combustion/burn_duration", hemispherical, 65, 9, flame_paths},
    {"combustion/burn_duration", pent_roof, 48, 8, flame_paths},

    {"friction/scale", work, 1, 0.14, "friction 3 % of the fuel at full load where brake has 29 %"},
    {"friction/scale", road, 0.94, 0.12,
     "friction 3 % of the fuel at full load where brake has 29 %"},
    {"friction/scale", sport, 0.97, 0.12,
     "friction 3 % of the fuel at full load where brake has 29 %"},
    {"friction/scale", racing, 0.95, 0.14, "light parts and thin oil; no source"},
    {"friction/scale", air, -0.02, 0.05, "a fan, where there is one, is an accessory"},
    {"friction/scale", liquid, 0.055, 0.05, "a coolant pump; no source for the number"},
    {"friction/scale", oil_and_air, 0.03, 0.05, "a larger oil pump; no source for the number"},

    {"exhaust/back_pressure", muffled_work, 11, 5, judged},
    {"exhaust/back_pressure", muffled_road, 25, 10, judged},
    {"exhaust/back_pressure", muffled_sport, 17, 7, judged},
    {"exhaust/back_pressure", muffled_racing, 8, 5, judged},
    {"exhaust/back_pressure", open, 2, 2, judged},

    {"cooling/known_head_temperature", air, 200, 20,
     "light aircraft 177 to 224 degC, karts 191 to 204, a flat four uphill 199 to 216"},
    {"cooling/known_head_temperature", liquid, 150, 20, "no source; metal 60 K over its coolant"},
    {"cooling/known_head_temperature", oil_and_air, 180, 20, "no source; between the two"},
    {"breathing/reference_head_temperature", air, 200, 0, "that of the known point"},
    {"breathing/reference_head_temperature", liquid, 150, 0, "that of the known point"},
    {"breathing/reference_head_temperature", oil_and_air, 180, 0, "that of the known point"},
    {"knock_anchor/head_temperature", air, 180, 15, "that of the known point at less speed"},
    {"knock_anchor/head_temperature", liquid, 135, 15, "that of the known point at less speed"},
    {"knock_anchor/head_temperature", oil_and_air, 162, 15,
     "that of the known point at less speed"},

    {"knock_anchor/octane_number", side_valve, 97, 8, "about a ratio worse than overhead valves"},
    {"knock_anchor/octane_number", wedge, 92, 7, "table of engines of 1960 to 1990 at ratio 8"},
    {"knock_anchor/octane_number", hemispherical, 93, 7, "the table's, with the longer flame way"},
    {"knock_anchor/octane_number", pent_roof, 87, 7, "about a ratio better than two valves"},
    {"knock_anchor/octane_number", air, 2, 3, "end gas on hotter walls; no source for the number"},
    {"knock_anchor/octane_number", liquid, 0, 2, "the table's engines"},
    {"knock_anchor/octane_number", oil_and_air, 1, 3, "between the two"},
};

double for_one_of_several(const Cylinder& engine) { return 1 / std::sqrt(engine.valves.per_side); }

/// Engine speed over the speed of the gas in the intake valves.
double engine_speed(const Cylinder& engine) {
    const double ratio = engine.valves.intake_ratio;
    return std::numbers::pi / engine.stroke * engine.valves.per_side * ratio * ratio;
}

// The best speed last: it follows from the valves.
constexpr ClassQuantity quantities[] = {
    {"valves/per_side", fields::number()},
    {"valves/intake_ratio", fields::number(), &for_one_of_several},
    {"valves/exhaust_ratio", fields::number(), &for_one_of_several},
    {"valves/intake_closing", fields::angle("deg")},
    {"breathing/peak_efficiency", fields::number()},
    {"breathing/fall_off", fields::number()},
    {"breathing/reference_head_temperature", fields::temperature("degC")},
    {"combustion/real_cycle_factor", fields::number()},
    {"combustion/burn_duration", fields::angle("deg")},
    {"friction/scale", fields::number()},
    {"exhaust/back_pressure", fields::pressure_difference("kPa")},
    {"cooling/known_head_temperature", fields::temperature("degC")},
    {"knock_anchor/octane_number", fields::number()},
    {"knock_anchor/head_temperature", fields::temperature("degC")},
    {"breathing/best_speed", fields::speed("m/s"), &engine_speed},
};

}  // namespace

std::span<const ClassPrior> class_priors() { return table; }

std::span<const ClassQuantity> class_quantities() { return quantities; }

}  // namespace windwall::engine
