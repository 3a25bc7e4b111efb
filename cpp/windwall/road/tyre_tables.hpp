#pragma once
#include <optional>
#include <string_view>

namespace windwall::road {

/// Greatest load on one tyre, kg, of a load index from 0 to 130; empty outside.
std::optional<double> load_index_mass(int index) noexcept;

/// Greatest speed, m/s, of a speed symbol from A1 to Y as moulded on the sidewall; empty for
/// others.
std::optional<double> speed_symbol_limit(std::string_view symbol) noexcept;

}  // namespace windwall::road
