#pragma once

namespace windwall::charge {

/// Open area of a butterfly plate with a shaft across the bore, m2, seen along the bore: the bore
/// less the ellipse of the plate and the strip of the shaft. Lengths in m; angles in rad from the
/// plane across the bore, `closed_angle` where the plate touches the wall. Exact; constant where
/// the plate's edge hides behind the shaft. Angles beyond closed and wide open are cut.
double throttle_area(double bore, double shaft, double plate_angle, double closed_angle) noexcept;

}  // namespace windwall::charge
