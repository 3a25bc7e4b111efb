#pragma once
#include <optional>

namespace windwall::charge {

/// What an integration over time holds of one part of the charge path. What is not held is as it
/// comes to be in a long pull.
struct Held {
    std::optional<double> metal;        // K, of its thermal node
    std::optional<double> running;      // share 0 to 1 of its pump
    std::optional<double> line_filled;  // share 0 to 1 of the line behind the pump
};

}  // namespace windwall::charge
