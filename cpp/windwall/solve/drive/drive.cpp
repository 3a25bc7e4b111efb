#include "windwall/solve/drive/drive.hpp"

#include "windwall/solve/drive/run.hpp"
#include "windwall/solve/point/guarded.hpp"

namespace windwall::solve {

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
