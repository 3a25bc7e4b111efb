#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/upgrade.hpp"

#include <optional>
#include <string>

namespace windwall::scenario {

/// Reads a part of an upgrade: of the charge path or of the driveline, as its kind says.
std::optional<Part> read_part(const fields::Cursor& part);

/// The id under which a part is inserted; a problem where it cannot be one.
std::optional<std::string> read_part_id(const fields::Cursor& part);

}  // namespace windwall::scenario
