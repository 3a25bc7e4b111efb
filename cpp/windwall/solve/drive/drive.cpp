#include "windwall/solve/drive/drive.hpp"

#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/drive/run.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr std::string_view turning = "engine/speed";
constexpr double rounding = 1e-6;  // of an event that is looked for in time

}  // namespace

std::vector<Limit> drive_limits(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated) {
    std::vector<Limit> limits = limits_of(vehicle, stated);
    if (!std::ranges::count(stated, turning, &Limit::address))
        limits.push_back({std::string(turning),
                          (1 + rounding) * vehicle::speed_limit(vehicle),
                          {},
                          "the rev limit of the engine"});
    return limits;
}

DriveResult drive(const vehicle::Vehicle& vehicle, const vehicle::Outing& outing,
                  const DriveOptions& options) {
    return guarded([&] { return Run(vehicle, outing, options).go(); },
                   [] {
                       DriveResult nothing;
                       nothing.end = DriveEnd::no_answer;
                       nothing.outcome = broken_off;
                       return nothing;
                   });
}

}  // namespace windwall::solve
