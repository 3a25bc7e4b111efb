#pragma once
#include <optional>
#include <string_view>

/// What is known of a whole class of parts, declared by a struct beside its rows: as arrays
/// `class_limits` and `class_cautions`. A result is addressed as a row's rating addresses it.
namespace windwall::fields {

/// What no part of its class bears, whatever its maker says; or, `unless_rated`, what most of them
/// do not bear, where the maker says nothing.
struct ClassLimit {
    std::string_view result;
    std::string_view why;
    std::optional<double> max{};  // SI
    std::optional<double> min{};
    bool unless_rated = false;
};

/// Where a result of a part or an engine becomes a thing to know about.
struct ClassCaution {
    std::string_view about;  // a word of the closed list of cautions
    std::string_view result;
    double high{};  // SI
};

}  // namespace windwall::fields
