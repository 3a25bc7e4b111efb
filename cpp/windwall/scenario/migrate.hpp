#pragma once
#include "windwall/fields/document.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace windwall::scenario {

/// One step from a version of scenario files to the next: the words under "format" before and
/// after, and what is done to the rest.
struct Migration {
    std::string_view from;
    std::string_view to;
    void (*change)(fields::Json& root);
};

/// All steps there are, oldest first; the first version has nothing behind it.
std::span<const Migration> migrations();

/// Takes a document step by step to the current format; nothing where no chain of steps leads
/// there from its own.
std::optional<fields::Json> migrate(fields::Json root, std::span<const Migration> steps,
                                    std::string_view target);

}  // namespace windwall::scenario
