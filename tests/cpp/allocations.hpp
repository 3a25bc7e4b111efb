#pragma once
#include <cstddef>

/// Blocks taken from the heap since the program began.
std::size_t allocations() noexcept;
