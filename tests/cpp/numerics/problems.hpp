#pragma once
#include <cstddef>
#include <span>

/// Test functions that more than one test solves; More, Garbow, Hillstrom, ACM TOMS 7 (1981) 17.
namespace problems {

inline void extended_rosenbrock(std::span<const double> x, std::span<double> r) {
    for (std::size_t i = 0; i < x.size(); i += 2) {
        r[i] = 10 * (x[i + 1] - x[i] * x[i]);
        r[i + 1] = 1 - x[i];
    }
}

}  // namespace problems
