#pragma once
#include "windwall/fields/one_of.hpp"

#include <optional>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

namespace windwall::fields {

/// Whole numbers, several numbers and several texts: what results have and files have not.
using Plain = std::variant<long, std::optional<long>, std::vector<long>, std::vector<double>,
                           std::vector<std::string>>;

namespace detail {

template <class T>
concept Shown = std::is_integral_v<T> || requires(const T& value) {
    requires std::is_arithmetic_v<typename T::value_type> ||
        std::is_same_v<typename T::value_type, std::string>;
};

/// As the widest of its sort.
template <class T>
Plain plain(const void* member) {
    const T& held = *static_cast<const T*>(member);
    if constexpr (std::is_integral_v<T>) {
        return static_cast<long>(held);
    } else if constexpr (is_optional<T>) {
        return held ? std::optional<long>(*held) : std::nullopt;
    } else if constexpr (std::is_integral_v<typename T::value_type>) {
        return std::vector<long>(held.begin(), held.end());
    } else {
        return std::vector<typename T::value_type>(held.begin(), held.end());
    }
}

}  // namespace detail

}  // namespace windwall::fields
