#pragma once
#include "windwall/charge/around.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <span>
#include <string_view>

namespace windwall::charge {

struct Plenum {
    static constexpr std::string_view kind = "plenum";
    static constexpr std::string_view says =
        "Volume that evens out the pulses; without loss in steady flow.";

    double volume{};  // m3

    media::Stream outlet(const media::Stream& in, const Around&) const noexcept { return in; }
    static std::span<const fields::Row> rows() {
        using namespace fields;
        static constexpr Row table[] = {
            required("volume", "V", at<&Plenum::volume>, fields::volume("L"), {0.05, 200},
                     "Volume between the last part of the path and the intake valves"),
        };
        return table;
    }
};

}  // namespace windwall::charge
