#include "windwall/fields/lookup.hpp"

#include <algorithm>
#include <functional>
#include <vector>

namespace windwall::fields {

double looked_up(const Columns& table, double at) noexcept {
    if (table.column.size() < 2 || table.empty()) return 0;
    const std::vector<double>&places = table.column[0], &values = table.column[1];
    const auto above = std::upper_bound(places.begin(), places.end(), at);
    if (above == places.begin()) return values.front();
    if (above == places.end()) return values.back();
    const auto i = static_cast<std::size_t>(above - places.begin());
    const double part = (at - places[i - 1]) / (places[i] - places[i - 1]);
    return values[i - 1] + part * (values[i] - values[i - 1]);
}

bool rises(const Columns& table) noexcept {
    const std::vector<double>& places = table.column[0];
    return std::ranges::adjacent_find(places, std::ranges::greater_equal{}) == places.end();
}

}  // namespace windwall::fields
