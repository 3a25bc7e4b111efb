#pragma once
#include <concepts>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace windwall::fields {

struct Row;

/// What every alternative of a OneOf brings: its word in files, one sentence, and its rows.
template <class T>
concept Kind = std::default_initializable<T> && std::copyable<T> && requires {
    { T::kind } -> std::convertible_to<std::string_view>;
    { T::description } -> std::convertible_to<std::string_view>;
    { T::rows() } -> std::same_as<std::span<const Row>>;
};

/// A closed set of alternatives, chosen in files by the word under "kind".
template <Kind... Ts>
struct OneOf {
    std::variant<Ts...> value;

    OneOf() = default;
    template <class T>
    requires(std::same_as<std::remove_cvref_t<T>, Ts> || ...) OneOf(T&& part)
        : value(std::forward<T>(part)) {}

    template <class Visitor>
    decltype(auto) visit(Visitor&& visitor) const {
        return std::visit(std::forward<Visitor>(visitor), value);
    }
    template <class T>
    const T* as() const noexcept {
        return std::get_if<T>(&value);
    }
    template <class T>
    T* as() noexcept {
        return std::get_if<T>(&value);
    }
    std::string_view kind() const {
        return visit([]<class T>(const T&) { return std::string_view(T::kind); });
    }
};

/// Whether a question about a type, asked of each alternative, is answered with yes.
template <template <class> class Question, class Alternatives>
inline constexpr bool of_all = false;
template <template <class> class Question, class... Ts>
inline constexpr bool of_all<Question, OneOf<Ts...>> = (Question<Ts>::value && ...);

/// One entry of a list of parts: the id a scenario gives it, and the part.
template <class Variant>
struct Entry {
    using Part = Variant;
    std::string id;
    Variant part;
};

namespace detail {

template <class T>
inline constexpr bool is_one_of = false;
template <class... Ts>
inline constexpr bool is_one_of<OneOf<Ts...>> = true;

template <class T>
inline constexpr bool is_entry_list = false;
template <class V>
inline constexpr bool is_entry_list<std::vector<Entry<V>>> = true;

template <class T>
inline constexpr bool is_optional = false;
template <class T>
inline constexpr bool is_optional<std::optional<T>> = true;

}  // namespace detail
}  // namespace windwall::fields
