#pragma once
#include "windwall/study/ranking.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::study {

/// Solved sets as bytes, to be sent and kept: every number to the bit. They are read by the build
/// that wrote them and by no other.
std::string packed(const std::vector<SetResult>& sets);

/// The same sets; nothing where the bytes are no such thing.
std::optional<std::vector<SetResult>> unpacked_sets(std::string_view bytes);

}  // namespace windwall::study
