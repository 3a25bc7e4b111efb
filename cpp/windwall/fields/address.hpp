#pragma once
#include "windwall/fields/expected.hpp"
#include "windwall/fields/member.hpp"
#include "windwall/fields/row.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// An address worked out once, so that many vehicles of one make can be asked for the same number
/// without reading text again. Follows pointers only; nothing is allocated.
class Path {
public:
    static constexpr std::size_t deepest = 8;

    /// One way down: into a member, and for parts and lists to one of its entries.
    struct Step {
        const Row* row{};
        std::size_t entry{};  // of parts or of a list
        std::size_t kind{};   // of a tagged member or part
    };

    /// The number in this struct. Fills an optional that is empty, with zero, on the way. Throws
    /// std::logic_error where another kind of part stands than when the address was worked out.
    double& at(void* root) const;

    /// The number, or nothing where an optional on the way is empty.
    std::optional<double> get(const void* root) const;

    const Row& row() const noexcept { return *steps_[size_ - 1].row; }
    const std::string& text() const noexcept { return text_; }

    /// One step further; the address grows by `word`.
    Path then(Step step, std::string_view word) const;

private:
    double* follow(void* root, bool fill) const;

    std::array<Step, deepest> steps_{};
    std::size_t size_ = 0;
    std::string text_;
};

/// Works out an address over the parts an example has, or says what is wrong with it and which one
/// is near.
Expected<Path> resolve(const GroupType& root, const void* example, std::string_view address);

/// Every number of an example, given or not, in the order of the rows.
std::vector<Path> all_addresses(const GroupType& root, const void* example);

}  // namespace windwall::fields
