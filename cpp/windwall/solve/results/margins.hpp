#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string>

namespace windwall::solve {

/// How far a point is from a knock margin of nothing in the middle of its band, each way found by
/// solving the coupled point again until nothing is left. Engine speed, road speed, throttle and
/// spark are held where they are, but for the one that is moved. Negative: that much too far
/// already. Empty: not reached within the range that is searched.
struct Margins {
    static constexpr std::string_view description =
        "What is left until the knock margin is zero in the middle of its band, each by solving "
        "again with engine speed, road speed, throttle and spark held, but for the one that is "
        "moved. Negative: that much too far already. None: not reached in the range that is "
        "searched (the drive ratio times e either way, 150 K, 40 degrees), or no blower to move.";
    std::string blower;  // id of the one whose drive is moved; may be empty
    std::optional<double> drive_ratio;
    std::optional<double> boost;
    std::optional<double> charge_temperature;
    std::optional<double> spark;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve
