#pragma once
#include "windwall/solve/gear_curve.hpp"

#include <optional>
#include <vector>

namespace windwall::solve {

/// Why the vehicle stops getting faster.
enum class Stop {
    balance,    // drag, rolling and slope take the whole thrust
    rev_limit,  // the engine may not turn faster, and no higher gear has thrust left over
    grip,       // the tyres hold no more thrust, and the road takes all of it
    standstill  // no gear takes the vehicle to where its clutch stops slipping
};

/// Where the climb from standstill ends.
struct Summit {
    Stop stop = Stop::standstill;
    double road_speed = 0;
    std::size_t gear = 0;
    std::optional<Pull> pull;  // solved there; empty at standstill
};

/// Goes up from standstill through all gears: on in the gear in use until its surplus ends, then in
/// any other that has surplus there, until none has. A balance beyond a gap that no gear crosses is
/// not reachable from below and is not found. The way is found on the curves, its end on solved
/// points, and the curve of the last gear is made to pass through that end.
Summit climb(Puller& puller, const EngineCurve& engine, std::vector<GearCurve>& curves);

}  // namespace windwall::solve
