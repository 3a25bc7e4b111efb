#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/fields/units.hpp"

#include <array>
#include <span>
#include <string>
#include <string_view>

template <>
struct windwall::fields::Names<windwall::fields::System> {
    static constexpr std::array<std::string_view, 2> names{"metric", "us"};
};

namespace windwall::scenario {

/// The version of scenario files that is written, and read without migration.
inline constexpr std::string_view current_format = "windwall-scenario/2";

/// What a file says about itself.
struct Header {
    static constexpr std::string_view description =
        "What a scenario is called and how it is shown.";
    std::string title;
    std::string notes;
    fields::System units = fields::System::metric;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::scenario
