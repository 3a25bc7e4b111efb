#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <span>
#include <string_view>

namespace windwall::charge {

/// A hole between the path and the weather. What leaves takes its share of vapour and drops along;
/// what is drawn in has met neither filter nor carburettor.
struct Leak {
    static constexpr std::string_view kind = "leak";
    static constexpr std::string_view description =
        "Hole to the weather: a hose off, a bolt lost, a gasket blown.";

    double area{};                        // m2
    double discharge_coefficient = 0.65;  // of the jet

    /// Gas in kg/s from the path to the weather, negative where it is drawn in.
    double lost(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::charge
