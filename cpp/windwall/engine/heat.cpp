#include "windwall/engine/heat.hpp"

#include "windwall/engine/fuel_air_cycle.hpp"

namespace windwall::engine {

Heat Walls::heat(double fuel_power, double equivalence_ratio) const noexcept {
    const double unburnt = fuel_power * unburnt_share(equivalence_ratio);
    return {share * (fuel_power - unburnt), unburnt};
}

std::span<const fields::Row> Walls::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default(
            "share", "q_w", at<&Walls::share>, number(), {0, 0.6}, 0.05,
            "Share of the heat released that reaches head, barrel and exhaust port",
            "full-load heat balance with 27.5 % of the fuel in coolant and oil, of which 3 % are "
            "friction, near a twentieth rich; 25 to 30 % for air-cooled engines"),
    };
    return table;
}

}  // namespace windwall::engine
