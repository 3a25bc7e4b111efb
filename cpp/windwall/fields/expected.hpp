#pragma once
#include <optional>
#include <string>
#include <utility>

namespace windwall::fields {

/// What was read, or one sentence that says why it could not be.
template <class T>
struct Reading {
    std::optional<T> value;
    std::string complaint;

    Reading(T made) : value(std::move(made)) {}
    static Reading refused(std::string sentence) { return Reading(std::move(sentence), 0); }

    explicit operator bool() const noexcept { return value.has_value(); }
    const T& operator*() const { return *value; }
    const T* operator->() const { return &*value; }

private:
    Reading(std::string sentence, int) : complaint(std::move(sentence)) {}
};

}  // namespace windwall::fields
