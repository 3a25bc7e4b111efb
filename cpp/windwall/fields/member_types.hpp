#pragma once
#include "windwall/fields/class_limit.hpp"
#include "windwall/fields/one_of.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

/// What rows know of the members they stand for, seen without their types.
namespace windwall::fields {

struct Row;

/// A rule across several keys of one struct that its values break: the key to point at, and why.
struct Violation {
    std::string_view key;
    std::string sentence;
};

/// A table of numbers in a scenario file, held by columns; its row names the columns.
struct Columns {
    std::vector<std::vector<double>> column;
    bool empty() const noexcept { return column.empty() || column.front().empty(); }
    bool operator==(const Columns&) const = default;
};

/// How the values of an enum are spelt in files; specialise with `static constexpr names`.
template <class Enum>
struct Names;

/// What kind of thing a row's member is.
enum class FieldType {
    number,           // double
    optional_number,  // std::optional<double>
    flag,             // bool
    text,             // std::string
    choice,           // enum with Names
    list,             // std::vector<double>
    table,            // Columns
    group,            // struct with rows()
    optional_group,   // std::optional of such a struct
    tagged,           // OneOf<...>, chosen by "kind"
    parts,            // std::vector<Entry<OneOf<...>>>, each with "id" and "kind"
};

/// The way from a thing to something inside it, seen without types: for those who change it and
/// for those who look at it.
struct Access {
    void* (*change)(void*) = nullptr;
    const void* (*look)(const void*) = nullptr;
    void* operator()(void* from) const { return change(from); }
    const void* operator()(const void* from) const { return look(from); }
};

/// Whole numbers, several numbers and several texts: what results have and files have not.
using Plain = std::variant<long, std::optional<long>, std::vector<long>, std::vector<double>,
                           std::vector<std::string>>;

struct GroupType;

/// A list of structs with rows, seen without its type.
struct ListType {
    const GroupType* group;
    std::size_t (*size)(const void* list);
    const void* (*entry)(const void* list, std::size_t);
};

/// A struct with rows, seen without its type.
struct GroupType {
    std::string_view description;
    std::span<const Row> (*rows)();
    std::optional<Violation> (*check)(const void*);
    Access peek;                  // the struct itself, or null where the optional is empty
    void* (*open)(void* member);  // the struct itself; fills an empty optional
    const void* (*fresh)();       // a default-made one: the only home of defaults
    std::span<const ClassLimit> limits{};
    std::span<const ClassCaution> cautions{};
};

/// An enum, seen without its type.
struct ChoiceType {
    std::span<const std::string_view> names;
    std::size_t (*get)(const void*);
    void (*set)(void*, std::size_t);
};

/// A OneOf, seen without its type.
struct TaggedType {
    std::span<const std::string_view> kinds;
    std::span<const GroupType* const> types;
    std::size_t (*index)(const void*);
    Access get;
    void* (*emplace)(void*, std::size_t kind);
};

/// A list of parts with ids, seen without its type.
struct PartsType {
    const TaggedType* tagged;
    std::size_t (*size)(const void*);
    void* (*append)(void* list, std::string id);  // the new entry's OneOf
    void (*clear)(void* list);
    const std::string& (*id)(const void* list, std::size_t);
    void* (*change)(void* list, std::size_t);  // the entry's OneOf
    const void* (*look)(const void* list, std::size_t);
    void* part(void* list, std::size_t at) const { return change(list, at); }
    const void* part(const void* list, std::size_t at) const { return look(list, at); }
};

/// Where a member lives inside its struct, and what it is.
struct Member {
    FieldType type{};
    Access of;
    const void* (*usual)() = nullptr;  // the same member of a default-made struct
    const GroupType* group = nullptr;
    const ChoiceType* choice = nullptr;
    const TaggedType* tagged = nullptr;
    const PartsType* parts = nullptr;
    // What only results have, whatever the type says: no file holds it and no address leads there.
    const ListType* list = nullptr;
    Plain (*plain)(const void* member) = nullptr;
};

}  // namespace windwall::fields
