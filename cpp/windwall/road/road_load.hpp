#pragma once
#include "windwall/road/body.hpp"
#include "windwall/road/resistance.hpp"

namespace windwall::road {

/// What holds a vehicle back, N, positive against the travel.
struct RoadLoad {
    double air{};
    double rolling{};
    double grade{};

    double total() const noexcept { return air + rolling + grade; }
};

/// Drag, N: 1/2 rho CdA v |v| at an air speed v in m/s, density in kg/m3, drag area in m2. A wind
/// from behind that is faster than the vehicle pushes it.
double air_drag(double drag_area, double density, double air_speed) noexcept;

/// Rolling resistance, N, of a mass in kg on a slope (rise over run). It turns its sign with the
/// speed, within a few tenths of a metre per second around standstill.
double rolling_force(double coefficient, double mass, double grade, double speed) noexcept;

/// Pull of a slope, N; uphill is positive.
double grade_force(double mass, double grade) noexcept;

/// All three at a ground speed and a headwind in m/s.
RoadLoad road_load(const Body& body, double speed, double density, double headwind,
                   double grade) noexcept;

/// The same load in still air as F = a + c v^2: what rises with speed in the tyres joins the drag.
Resistance still_air_resistance(const Body& body, double density, double grade) noexcept;

/// F = A + B v + C v^2, the form of coast-down results (40 CFR 1066.310); any one set of units.
double road_load_polynomial(double speed, double constant, double linear, double square) noexcept;

}  // namespace windwall::road
