#pragma once
// What the standard library of Debian's emscripten (libc++ 13) lacks of C++20, as far as the core
// asks for it. Included before everything else by the build for browsers alone; newer libraries
// have all of it.
#include <ciso646>

#if defined(_LIBCPP_VERSION) && _LIBCPP_VERSION < 15000
#include <algorithm>
#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <iterator>
#include <ranges>
#include <string>

// NOLINTBEGIN: the standard says that nobody adds to std; where it is not there, nobody else does.
namespace std::ranges {

template <class R>
using its_iterator = decltype(std::begin(std::declval<R&>()));

/// A predicate of what a projection makes.
template <class F, class P>
constexpr auto projected_by(F& f, P& p) {
    return [&](auto&& x) { return bool(std::invoke(f, std::invoke(p, x))); };
}
template <class F, class P>
constexpr auto both_projected_by(F& f, P& p) {
    return [&](auto&& x, auto&& y) {
        return bool(std::invoke(f, std::invoke(p, x), std::invoke(p, y)));
    };
}

template <class R, class F, class P = identity>
constexpr bool any_of(R&& r, F f, P p = {}) {
    return std::any_of(std::begin(r), std::end(r), projected_by(f, p));
}
template <class R, class F, class P = identity>
constexpr bool all_of(R&& r, F f, P p = {}) {
    return std::all_of(std::begin(r), std::end(r), projected_by(f, p));
}
template <class R, class F, class P = identity>
constexpr bool none_of(R&& r, F f, P p = {}) {
    return std::none_of(std::begin(r), std::end(r), projected_by(f, p));
}
template <class R, class F, class P = identity>
constexpr auto find_if(R&& r, F f, P p = {}) {
    return std::find_if(std::begin(r), std::end(r), projected_by(f, p));
}
template <class R, class T, class P = identity>
constexpr auto find(R&& r, const T& value, P p = {}) {
    return ranges::find_if(
        r, [&](auto&& x) { return x == value; }, p);
}
template <class R, class F, class P = identity>
constexpr auto count_if(R&& r, F f, P p = {}) {
    return std::count_if(std::begin(r), std::end(r), projected_by(f, p));
}
template <class R, class T, class P = identity>
constexpr auto count(R&& r, const T& value, P p = {}) {
    return ranges::count_if(
        r, [&](auto&& x) { return x == value; }, p);
}
template <class R, class F = equal_to, class P = identity>
constexpr auto adjacent_find(R&& r, F f = {}, P p = {}) {
    return std::adjacent_find(std::begin(r), std::end(r), both_projected_by(f, p));
}
template <class A, class B, class F = equal_to, class P = identity, class Q = identity>
constexpr bool equal(A&& a, B&& b, F f = {}, P p = {}, Q q = {}) {
    return std::equal(std::begin(a), std::end(a), std::begin(b), std::end(b),
                      [&](auto&& x, auto&& y) {
                          return bool(std::invoke(f, std::invoke(p, x), std::invoke(q, y)));
                      });
}
template <class R, class F = less, class P = identity>
constexpr bool is_sorted(R&& r, F f = {}, P p = {}) {
    return std::is_sorted(std::begin(r), std::end(r), both_projected_by(f, p));
}
template <class R, class F = less, class P = identity>
constexpr void stable_sort(R&& r, F f = {}, P p = {}) {
    std::stable_sort(std::begin(r), std::end(r), both_projected_by(f, p));
}
template <class R, class F = less, class P = identity>
constexpr void sort(R&& r, F f = {}, P p = {}) {
    std::sort(std::begin(r), std::end(r), both_projected_by(f, p));
}
template <class R, class F = less, class P = identity>
constexpr auto min_element(R&& r, F f = {}, P p = {}) {
    return std::min_element(std::begin(r), std::end(r), both_projected_by(f, p));
}
template <class R, class F = less, class P = identity>
constexpr auto max_element(R&& r, F f = {}, P p = {}) {
    return std::max_element(std::begin(r), std::end(r), both_projected_by(f, p));
}
template <class R, class T, class F = less, class P = identity>
constexpr auto lower_bound(R&& r, const T& value, F f = {}, P p = {}) {
    return std::lower_bound(std::begin(r), std::end(r), value, [&](auto&& x, auto&& y) {
        return bool(std::invoke(f, std::invoke(p, x), y));
    });
}
template <class R, class T, class F = less, class P = identity>
constexpr auto upper_bound(R&& r, const T& value, F f = {}, P p = {}) {
    return std::upper_bound(std::begin(r), std::end(r), value, [&](auto&& x, auto&& y) {
        return bool(std::invoke(f, x, std::invoke(p, y)));
    });
}
template <class R, class T>
constexpr void fill(R&& r, const T& value) {
    std::fill(std::begin(r), std::end(r), value);
}
template <class R, class T>
constexpr void replace(R&& r, const T& old, const T& made) {
    std::replace(std::begin(r), std::end(r), old, made);
}
template <class R>
constexpr void reverse(R&& r) {
    std::reverse(std::begin(r), std::end(r));
}
template <class R, class O>
constexpr void copy(R&& r, O to) {
    std::copy(std::begin(r), std::end(r), to);
}
template <class R, class O, class F, class P = identity>
constexpr void copy_if(R&& r, O to, F f, P p = {}) {
    std::copy_if(std::begin(r), std::end(r), to, projected_by(f, p));
}
/// Of a range, as one argument or two; std::move of one argument is something else.
template <class R, class O>
constexpr void move(R&& r, O to) {
    std::move(std::begin(r), std::end(r), to);
}

}  // namespace std::ranges

namespace std {

/// Reads the plain digits of a number; the texts are short.
inline from_chars_result from_chars(const char* first, const char* last, double& value,
                                    chars_format = chars_format::general) {
    const char* end = first;
    if (end != last && *end == '-') ++end;
    while (end != last && ((*end >= '0' && *end <= '9') || *end == '.'))
        ++end;
    const string digits(first, end);
    char* stopped{};
    const double read = strtod(digits.c_str(), &stopped);
    if (stopped == digits.c_str()) return {first, errc::invalid_argument};
    value = read;
    return {first + (stopped - digits.c_str()), errc{}};
}

inline to_chars_result to_chars(char* first, char* last, double value, chars_format style,
                                int precision) {
    const char* const form = style == chars_format::fixed ? "%.*f" : "%.*e";
    const int size = snprintf(first, size_t(last - first), form, precision, value);
    if (size < 0 || size >= last - first) return {last, errc::value_too_large};
    return {first + size, errc{}};
}

/// The fewest digits that are read back as the same number.
inline to_chars_result to_chars(char* first, char* last, double value, chars_format style) {
    for (int precision = 0; precision < 17; ++precision) {
        const auto made = to_chars(first, last, value, chars_format::scientific, precision);
        if (made.ec != errc{}) return made;
        if (strtod(string(first, made.ptr).c_str(), nullptr) == value) return made;
    }
    return to_chars(first, last, value, style, 17);
}

}  // namespace std
// NOLINTEND
#endif
