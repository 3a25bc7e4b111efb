#pragma once
#include <cstddef>
#include <iterator>

namespace windwall::fields {

/// Hands a text to a parser and leaves a trace of how far it has been read.
class TracedIterator {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    TracedIterator(const char* at, const char** trace) : at_(at), trace_(trace) {}
    reference operator*() const { return *at_; }
    TracedIterator& operator++() {
        *trace_ = ++at_;
        return *this;
    }
    TracedIterator operator++(int) {
        auto before = *this;
        ++*this;
        return before;
    }
    bool operator==(const TracedIterator& other) const { return at_ == other.at_; }
    bool operator!=(const TracedIterator& other) const { return at_ != other.at_; }

private:
    const char* at_;
    const char** trace_;
};

}  // namespace windwall::fields
