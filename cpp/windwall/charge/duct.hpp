#pragma once
#include "windwall/charge/around.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <span>
#include <string_view>

namespace windwall::charge {

struct Duct {
    static constexpr std::string_view kind = "duct";
    static constexpr std::string_view says = "Round pipe or hose with its bends.";

    double length{};  // m
    double bore{};    // m
    double loss_coefficient = 0.3;
    double roughness = 0.02e-3;  // m

    media::Stream outlet(const media::Stream& in, const Around& around) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::charge
