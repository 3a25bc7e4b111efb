#pragma once
#include <array>
#include <cstddef>

namespace windwall::media {

/// What may travel with the air as liquid or vapour. The numbers index Stream's arrays.
enum class Vapour { water, methanol, ethanol, petrol };

inline constexpr std::array<Vapour, 4> all_vapours{Vapour::water, Vapour::methanol, Vapour::ethanol,
                                                   Vapour::petrol};

constexpr std::size_t index(Vapour vapour) noexcept { return static_cast<std::size_t>(vapour); }

}  // namespace windwall::media
