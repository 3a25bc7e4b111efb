#pragma once
#include "windwall/fields/expected.hpp"
#include "windwall/fields/member.hpp"
#include "windwall/fields/row.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// The struct that owns a value, or why there is none.
template <class Void>
struct Owner {
    Void* object{};
    std::string why{};
    explicit operator bool() const noexcept { return object != nullptr; }
};

/// The way to one value of a struct with rows, worked out once from an address: by keys and by the
/// ids of parts, so that the same path serves every layout in which the part stands.
class FieldPath {
public:
    /// One way down: into a group, a member with kinds, or a part of this id and kind.
    struct Step {
        const Row* row{};
        std::string id{};
        std::size_t kind = 0;
    };

    const std::string& text() const noexcept { return text_; }
    const Row& row() const noexcept { return *row_; }
    /// Which number of a list, counted from 0; nothing for a value or a whole list.
    std::optional<std::size_t> entry() const noexcept { return entry_; }
    /// The id of the part it lies in; empty outside of parts.
    std::string_view part() const noexcept;
    bool is_number() const noexcept;
    bool may_be_empty() const noexcept;

    /// The struct that owns the value; with `fill`, optional groups on the way come to be.
    Owner<void> owner(void* root, bool fill) const;
    Owner<const void> owner(const void* root) const;

    /// The number in this struct. Fills an optional that is empty, with zero, on the way. Throws
    /// std::logic_error where there is none: where another kind of part stands, or fewer entries.
    double& at(void* root) const;
    /// The number if it is there, or null.
    double* find(void* root) const;
    /// The number, or nothing where an optional on the way is empty or another part stands there.
    std::optional<double> get(const void* root) const;

    /// A rule across fields that one of the structs on the way breaks, or what an optional one
    /// that came to be on the way still lacks.
    std::optional<std::string> broken_rule(const void* root) const;

    FieldPath into(Step step) const;
    FieldPath to(const Row& row, std::optional<std::size_t> entry = {}) const;

private:
    std::string text_;
    std::vector<Step> way_;  // from the root to the struct that owns the value
    const Row* row_{};
    std::optional<std::size_t> entry_;
};

/// Finds the path of an address over the parts an example has, or says what is wrong with the
/// address and which one is near. Optional groups are looked into whether filled or not.
Expected<FieldPath> find_path(const GroupType& root, const void* example, std::string_view address);

/// The same for numbers that are there, given or not; refuses what else stands in an example.
Expected<FieldPath> find_number(const GroupType& root, const void* example,
                                std::string_view address);

/// Every number of an example, given or not, in the order of the rows.
std::vector<FieldPath> all_numbers(const GroupType& root, const void* example);

/// Why an address leads to no number of an example, and which one is near.
std::string no_such_number(const GroupType& root, const void* example, std::string_view address);

}  // namespace windwall::fields
