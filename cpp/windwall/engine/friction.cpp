#include "windwall/engine/friction.hpp"

namespace windwall::engine {

double Friction::mean_pressure(double piston_speed, double boost,
                               double film_share) const noexcept {
    return scale * (film_share * (base + per_piston_speed * piston_speed) + gas_load * boost);
}

std::span<const fields::Row> Friction::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default("base", "f_0", at<&Friction::base>, pressure_difference("kPa"), {10, 300}, 15,
                     "Rubbing mean effective pressure towards standstill",
                     "no source for the line; it takes 4.4 % of the fuel at full load, where a "
                     "published balance has 3 % (FEV)"),
        with_default("per_piston_speed", "f_1", at<&Friction::per_piston_speed>,
                     pressure_difference("kPa"), {0, 30}, 1.2,
                     "Rise of the rubbing mean effective pressure per m/s of mean piston speed",
                     "no source for the line; it takes 4.4 % of the fuel at full load, where a "
                     "published balance has 3 % (FEV)"),
        with_default(
            "gas_load", "f_p", at<&Friction::gas_load>, number(), {0, 0.6}, 0.06,
            "Rise of the rubbing mean effective pressure per unit of manifold pressure above "
            "the weather",
            "no source; form of the gas load term of SAE 890836, which was not read"),
        with_default("scale", "s_f", at<&Friction::scale>, number(), {0.3, 3}, 0.12,
                     "Factor on all rubbing friction",
                     "spread between engines of one kind; estimate")
            .chosen_by("design"),
    };
    return table;
}

}  // namespace windwall::engine
