#include "windwall/engine/own_fuel.hpp"

namespace windwall::engine {

Mixture mix_at(const Intake& intake, const media::Fuel& fuel, double target, bool trims) noexcept {
    if (intake.carburetted) return mix_carburetted(intake.charge, fuel);
    double air = 1 / target;
    if (intake.fuel_cut)
        air *= 1 - *intake.fuel_cut;
    else if (trims)
        air -= intake.trim ? *intake.trim : air_for_injected(intake.charge);
    return mix_for(intake.charge, fuel, air);
}

double trim_rate(double trim, double needed, double trim_time) noexcept {
    return (needed - trim) / trim_time;
}

}  // namespace windwall::engine
