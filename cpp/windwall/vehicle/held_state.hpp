#pragma once
#include "windwall/charge/held.hpp"

#include <array>
#include <optional>
#include <vector>

namespace windwall::vehicle {

/// What an integration over time holds while a balance is sought: temperatures in K, and what the
/// walls give back of the liquid they caught. What is not held is as it comes to be in a long pull.
struct HeldState {
    std::vector<charge::Held> path;  // one for each part of the charge path, or none
    std::optional<double> head, oil, block;
    std::optional<double> under_hood;
    /// kg/s of each liquid, by media::Vapour, that comes off the walls before the intake valves.
    std::optional<std::array<double, 4>> film;
    /// Air, kg per kg of dry air, for whose fuel the engine's own has been trimmed by now.
    std::optional<double> trim;
};

}  // namespace windwall::vehicle
