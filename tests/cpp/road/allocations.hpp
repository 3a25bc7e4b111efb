#pragma once
#include <cstddef>

/// How often this program has asked the heap for memory.
extern std::size_t allocations;
