#pragma once
#include <optional>
#include <string>
#include <utility>

namespace windwall::fields {

/// What was read, or one sentence that says why it could not be.
template <class T>
struct Expected {
    std::optional<T> value;
    std::string violation;

    Expected(T made) : value(std::move(made)) {}
    static Expected refused(std::string sentence) { return Expected(std::move(sentence), 0); }

    explicit operator bool() const noexcept { return value.has_value(); }
    const T& operator*() const { return *value; }
    const T* operator->() const { return &*value; }

private:
    Expected(std::string sentence, int) : violation(std::move(sentence)) {}
};

}  // namespace windwall::fields
