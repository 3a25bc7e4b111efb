#pragma once
#include <span>
#include <string_view>

namespace windwall::fields {

/// The word a misspelt one was probably meant to be, or empty where none is near: a difference of
/// capitals, or letters wrong, missing, added or swapped in up to a third of the word and no more
/// than eight.
std::string_view nearest(std::string_view typed, std::span<const std::string_view> words);

}  // namespace windwall::fields
