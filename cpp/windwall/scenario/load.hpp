#pragma once
#include "windwall/fields/problems.hpp"
#include "windwall/scenario/scenario.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace windwall::scenario {

/// A scenario, or everything that is wrong with its text.
struct Loaded {
    std::optional<Scenario> scenario;  // empty where there are problems
    fields::Problems problems;
    std::string file;

    explicit operator bool() const noexcept { return scenario.has_value(); }
    /// One problem a line, in the order of the text: "file:line:column address: message".
    std::string violation() const { return problems.text(file); }
};

/// Reads the text of a scenario file. `file` is only its name in messages; nothing but the text is
/// looked at. It never throws for anything that stands in the text.
Loaded load(std::string_view text, std::string_view file = "scenario");

}  // namespace windwall::scenario
