#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// Where in a text, from 1; zero where something does not come from a text. Columns count
/// characters.
struct Place {
    int line = 0;
    int column = 0;
    auto operator<=>(const Place&) const = default;
};

/// One thing that is wrong with a file.
struct Problem {
    std::string address;  // keys joined by '/', parts by id, list entries by number from 1
    int line = 0;
    int column = 0;
    std::string message;
    bool operator==(const Problem&) const = default;
};

/// "outer/inner", or the one where the other is empty.
std::string joined(std::string_view outer, std::string_view inner);

/// Whether an address is this one or lies below it.
bool is_within(std::string_view address, std::string_view outer);

/// "file:line:column address: message".
std::string to_text(const Problem& problem, std::string_view file);

/// All problems of a file; after a few hundred it only counts.
class Problems {
public:
    static constexpr std::size_t most = 200;

    void add(std::string_view address, Place place, std::string message);
    bool empty() const noexcept { return total_ == 0; }
    std::size_t size() const noexcept { return total_; }
    /// Whether more are only counted, so that nobody needs to word them.
    bool full() const noexcept { return total_ >= most; }

    /// In the order of the text.
    std::vector<Problem> sorted() const;
    /// One problem a line, in the order of the text.
    std::string text(std::string_view file) const;

private:
    std::vector<Problem> kept_;
    std::size_t total_ = 0;
};

}  // namespace windwall::fields
