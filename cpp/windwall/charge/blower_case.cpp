#include "windwall/charge/blower_case.hpp"

#include "windwall/charge/pipe_friction.hpp"
#include "windwall/charge/positive_blower.hpp"
#include "windwall/charge/wall_heat.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

// Of the displacement to two thirds: 26 for a box around a published one of 1.5 L with its drive.
constexpr double surface_by_size = 25;
constexpr double pocket_by_size = 0.5;  // of the cube root of the displacement; estimate

/// What it is bolted to is no hotter than the engine's block, where that is still cold.
double mount(const PositiveBlower& blower, const Surroundings& surroundings) noexcept {
    return std::min(blower.mount_temperature,
                    surroundings.block.value_or(blower.mount_temperature));
}

}  // namespace

double case_surface(double displacement) noexcept {
    const double size = std::cbrt(displacement);
    return surface_by_size * size * size;
}

double case_film(double displacement, double rotor_speed, const media::Stream& in) noexcept {
    const double size = std::cbrt(displacement), pocket = pocket_by_size * size;
    const double tips = std::abs(rotor_speed) * size / 2;
    const double flow = in.density() * tips * std::numbers::pi / 4 * pocket * pocket;
    return pipe_film(flow, air_viscosity(in.temperature), pocket);
}

BlowerCase::BlowerCase(const PositiveBlower& blower, const media::Stream& in, double rotor_speed,
                       double bearing_loss, const Surroundings& surroundings) noexcept
    : stated_(blower.case_temperature) {
    const double surface = blower.case_area.value_or(case_surface(blower.displacement));
    from_charge_ = blower.case_conductance ? *blower.case_conductance
                                           : blower.case_exchange * surface *
                                                 case_film(blower.displacement, rotor_speed, in);
    const double to_air = blower.case_to_air.value_or(surface * surroundings.outside_film);
    outward_ = to_air + blower.mount_conductance;
    if (outward_ > 0) {
        outside_ = (to_air * surroundings.under_hood_temperature +
                    blower.mount_conductance * mount(blower, surroundings)) /
                   outward_;
        bearing_loss_ = bearing_loss;
        behind_ = outside_ + bearing_loss / outward_;
        conductance_ = from_charge_ * outward_ / (from_charge_ + outward_);
    } else {  // nothing leaves an insulated case: what the bearings make returns to the charge
        outside_ = behind_ = surroundings.under_hood_temperature;
    }
    if (const auto fixed = stated_ ? stated_ : surroundings.held.metal) {
        conductance_ = from_charge_;
        behind_ = *fixed;
    }
}

double BlowerCase::temperature(double mean) const noexcept {
    return from_charge_ > 0 ? mean - taken(mean) / from_charge_ : behind_;
}

media::LumpedNode BlowerCase::node(double mean, double heat_capacity) const noexcept {
    return {"case", heat_capacity, bearing_loss_, from_charge_, mean, outward_, outside_, stated_};
}

}  // namespace windwall::charge
