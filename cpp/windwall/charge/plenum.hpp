#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

struct Plenum {
    static constexpr std::string_view kind = "plenum";
    static constexpr std::string_view description =
        "Volume that evens out the pulses; without loss in steady flow.";

    double volume{};                    // m3
    std::optional<double> conductance;  // W/K

    /// Of a cube of this volume in still air, W/K, unless stated.
    double wall_conductance() const noexcept;
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::charge
