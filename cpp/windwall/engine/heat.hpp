#pragma once
#include "windwall/fields/row.hpp"

#include <span>
#include <string_view>

namespace windwall::engine {

/// Where fuel power goes beside the crank and the exhaust gas, in W.
struct Heat {
    double walls{};    // to head, barrel and exhaust port, rubbing not included
    double unburnt{};  // leaves as carbon monoxide and hydrogen
};

/// How the burnt charge heats the engine.
struct Walls {
    static constexpr std::string_view description = "How the burnt charge heats head and barrel.";

    double share = 0.27;

    /// From the power of all fuel burnt in W.
    Heat heat(double fuel_power, double equivalence_ratio) const noexcept;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::engine
