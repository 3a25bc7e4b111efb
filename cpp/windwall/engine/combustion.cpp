#include "windwall/engine/combustion.hpp"

#include "windwall/engine/fuel_air_cycle.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::engine {

double Combustion::efficiency(double compression_ratio, double equivalence_ratio,
                              double retard) const noexcept {
    return real_cycle_factor * fuel_air_efficiency(compression_ratio, equivalence_ratio) *
           spark_penalty(retard);
}

double spark_penalty(double retard) noexcept {
    const double degrees = std::min(60.0, std::abs(retard) * 180 / std::numbers::pi);
    return 1 - degrees * degrees * (2.4e-4 - 1.3e-6 * degrees);
}

std::span<const fields::Row> Combustion::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default("real_cycle_factor", "k_r", at<&Combustion::real_cycle_factor>, number(),
                     {0.5, 1}, 0.03,
                     "Indicated work of the real cycle over that of the fuel-air cycle",
                     "derived: a two-zone cycle has 0.90, less some 5 % for leakage, crevices and "
                     "blow-down")
            .chosen_by("design"),
        flag("trims_for_injected_fuel", at<&Combustion::trims_for_injected_fuel>,
             "Whether the engine's own fuel is cut so that methanol or other fuel sprayed into "
             "the charge leaves the mixture as it was; otherwise it becomes richer",
             "chosen by the project; a closed loop or a retuned map does, an untouched carburettor "
             "does not"),
        optional("trim_time", "tau_t", at<&Combustion::trim_time>, time("s"), {0.01, 60},
                 "Time in which that cut follows what is sprayed, to 63 %, where a drive goes over "
                 "time; when not given, at once, as a map that reads the charge's fuel would"),
        with_default(
            "burn_duration", "a_b", at<&Combustion::burn_duration>, angle("deg"), {25, 120}, 10,
            "Crank angle from 0 to 100 % burnt with 5 % residual; the knock integral uses it",
            "no source; two-valve heads, pent roofs burn faster")
            .chosen_by("design"),
    };
    return table;
}

}  // namespace windwall::engine
