#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/road/traction.hpp"
#include "windwall/road/tyre_size.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace windwall::road {

/// Radius that the road speed of a free-rolling wheel goes by, m: `factor` times half the overall
/// diameter of the new tyre, which a loaded tyre never reaches.
double rolling_radius(double diameter, double factor) noexcept;

struct Tyres {
    static constexpr std::string_view description = "The tyres that drive, and the weight on them.";

    std::string size;
    std::optional<double> measured_radius;  // m
    double rolling_factor = 0.969;
    double growth = 0;  // share gained at 100 km/h
    double slip_stiffness = 20;
    double grip = 0.9;
    DrivenAxle driven_axle = DrivenAxle::rear;
    double weight_on_driven_axle = 0.5;  // share of the standing weight on the driven axle
    double driven_tyres = 2;
    double height_over_wheelbase = 0.3;
    std::optional<double> speed_limit;  // m/s
    std::optional<double> load_limit;   // kg on one tyre

    /// m, at a road speed in m/s; 0 when neither a radius nor a readable size is given. It reads
    /// the size again at every call: keep the answer where it is asked for often.
    double rolling_radius(double speed = 0) const noexcept;
    /// Share of the wheels' speed lost under a thrust in N on a weight of the driven axle in N.
    double slip(double thrust, double load) const noexcept;
    /// Weight on the driven axle, N, of a vehicle of this mass in kg under a thrust in N.
    double driven_load(double mass, double thrust) const noexcept;
    /// Greatest thrust, N, for a mass in kg.
    double grip_limit(double mass) const noexcept;
    /// Mass on one driven tyre, kg.
    double load_per_tyre(double mass, double thrust) const noexcept;
    /// m/s, as stated or as the size says; empty when neither does.
    std::optional<double> speed_rating() const noexcept;
    /// kg on one tyre, likewise.
    std::optional<double> load_rating() const noexcept;

    std::optional<fields::Violation> check() const;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::road
