#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/upgrade.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace windwall::scenario {

/// Reads a part of an upgrade: of the charge path or of the driveline, as its kind says.
std::optional<Part> read_part(const fields::Cursor& part);

/// The id under which a part is inserted; a problem where it cannot be one.
std::optional<std::string> read_part_id(const fields::Cursor& part);

/// Empty, or why this is no word for an id.
std::string word_complaint(std::string_view id);

}  // namespace windwall::scenario
