#pragma once

namespace windwall::media {

/// Pressure ratio at and below which the flow is sonic, (2/(g+1))^(g/(g-1)).
double critical_ratio(double gamma) noexcept;

/// Psi of the isentropic nozzle for `ratio` = downstream over upstream pressure. Constant below the
/// critical ratio, zero from 1 upward, exact up to 0.9995; above, a cubic keeps the slope finite.
double flow_function(double ratio, double gamma) noexcept;

/// Mass flow in kg/s through `effective_area` (discharge coefficient times area, m2) between two
/// absolute pressures. Negative when the downstream pressure is the higher one: reverse flow is
/// taken as symmetric, with the same temperature, R and gamma. No recovery behind the opening.
double orifice_flow(double effective_area, double upstream_pressure, double upstream_temperature,
                    double downstream_pressure, double R, double gamma) noexcept;

}  // namespace windwall::media
