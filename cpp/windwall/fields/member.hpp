#pragma once
#include "windwall/fields/one_of.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

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

/// A struct with rows, seen without its type.
struct GroupType {
    std::string_view description;
    std::span<const Row> (*rows)();
    std::optional<Violation> (*check)(const void*);
    Access peek;                  // the struct itself, or null where the optional is empty
    void* (*open)(void* member);  // the struct itself; fills an empty optional
    const void* (*fresh)();       // a default-made one: the only home of defaults
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
};

namespace detail {

template <class T>
concept Checked = requires(const T& made) {
    { made.check() } -> std::same_as<std::optional<Violation>>;
};

template <class T>
constexpr std::string_view description() {
    if constexpr (requires { T::description; }) return T::description;
    return {};
}

template <class T>
std::optional<Violation> check(const void* made) {
    if constexpr (Checked<T>) return static_cast<const T*>(made)->check();
    return std::nullopt;
}

template <class T>
const void* fresh() {
    static const T made{};
    return &made;
}

struct Itself {
    auto* operator()(auto& member) const { return &member; }
};

struct Held {
    auto* operator()(auto& member) const { return member ? &*member : nullptr; }
};

template <auto pointer>
struct MemberAt {
    auto* operator()(auto& owner) const { return &(owner.*pointer); }
};

template <class From, class Inside>
inline constexpr Access access{
    [](void* from) -> void* { return Inside{}(*static_cast<From*>(from)); },
    [](const void* from) -> const void* { return Inside{}(*static_cast<const From*>(from)); },
};

template <class T>
inline constexpr GroupType plain_group{
    description<T>(), &T::rows, &check<T>, access<T, Itself>, [](void* member) { return member; },
    &fresh<T>,
};

template <class T>
inline constexpr GroupType optional_group{
    description<T>(),
    &T::rows,
    &check<T>,
    access<std::optional<T>, Held>,
    [](void* member) -> void* {
        auto& held = *static_cast<std::optional<T>*>(member);
        return held ? &*held : &held.emplace();
    },
    &fresh<T>,
};

template <class Enum>
inline constexpr ChoiceType choice_type{
    Names<Enum>::names,
    [](const void* member) { return static_cast<std::size_t>(*static_cast<const Enum*>(member)); },
    [](void* member, std::size_t at) { *static_cast<Enum*>(member) = static_cast<Enum>(at); },
};

template <class Variant>
struct TaggedOf;

template <class... Ts>
struct TaggedOf<OneOf<Ts...>> {
    using Held = OneOf<Ts...>;
    static constexpr std::array<std::string_view, sizeof...(Ts)> kinds{Ts::kind...};
    static constexpr std::array<const GroupType*, sizeof...(Ts)> types{&plain_group<Ts>...};

    struct Chosen {
        void* operator()(Held& member) const {
            return std::visit([](auto& part) -> void* { return &part; }, member.value);
        }
        const void* operator()(const Held& member) const {
            return std::visit([](const auto& part) -> const void* { return &part; }, member.value);
        }
    };
    static void* emplace(void* member, std::size_t kind) {
        auto& held = *static_cast<Held*>(member);
        using Make = void (*)(decltype((held.value)));
        static constexpr Make make[] = {[](auto& into) { into.template emplace<Ts>(); }...};
        make[kind](held.value);
        return Chosen{}(held);
    }
    static constexpr TaggedType type{
        kinds,
        types,
        [](const void* member) { return static_cast<const Held*>(member)->value.index(); },
        access<Held, Chosen>,
        &emplace,
    };
};

template <class Variant>
using Entries = std::vector<Entry<Variant>>;

template <class Variant>
inline constexpr PartsType parts_type{
    &TaggedOf<Variant>::type,
    [](const void* list) { return static_cast<const Entries<Variant>*>(list)->size(); },
    [](void* list, std::string id) -> void* {
        auto& entries = *static_cast<Entries<Variant>*>(list);
        return &entries.emplace_back(Entry<Variant>{std::move(id), {}}).part;
    },
    [](void* list) { static_cast<Entries<Variant>*>(list)->clear(); },
    [](const void* list, std::size_t at) -> const std::string& {
        return (*static_cast<const Entries<Variant>*>(list))[at].id;
    },
    [](void* list, std::size_t at) -> void* {
        return &(*static_cast<Entries<Variant>*>(list))[at].part;
    },
    [](const void* list, std::size_t at) -> const void* {
        return &(*static_cast<const Entries<Variant>*>(list))[at].part;
    },
};

template <class T>
constexpr Member describe(Access of, const void* (*usual)()) {
    Member made{.type = FieldType::number, .of = of, .usual = usual};
    if constexpr (std::is_same_v<T, double>) {
    } else if constexpr (std::is_same_v<T, std::optional<double>>) {
        made.type = FieldType::optional_number;
    } else if constexpr (std::is_same_v<T, bool>) {
        made.type = FieldType::flag;
    } else if constexpr (std::is_same_v<T, std::string>) {
        made.type = FieldType::text;
    } else if constexpr (std::is_enum_v<T>) {
        made.type = FieldType::choice;
        made.choice = &choice_type<T>;
    } else if constexpr (std::is_same_v<T, std::vector<double>>) {
        made.type = FieldType::list;
    } else if constexpr (std::is_same_v<T, Columns>) {
        made.type = FieldType::table;
    } else if constexpr (is_one_of<T>) {
        made.type = FieldType::tagged;
        made.tagged = &TaggedOf<T>::type;
    } else if constexpr (is_entry_list<T>) {
        made.type = FieldType::parts;
        made.parts = &parts_type<typename T::value_type::Part>;
    } else if constexpr (is_optional<T>) {
        made.type = FieldType::optional_group;
        made.group = &optional_group<typename T::value_type>;
    } else {
        made.type = FieldType::group;
        made.group = &plain_group<T>;
    }
    return made;
}

template <class Owner, class T>
T member_type(T Owner::*);
template <class Owner, class T>
Owner owner_type(T Owner::*);

template <auto pointer>
using OwnerOf = decltype(owner_type(pointer));

template <auto pointer>
const void* usual() {
    return &(static_cast<const OwnerOf<pointer>*>(fresh<OwnerOf<pointer>>())->*pointer);
}

}  // namespace detail

/// The member a row stands for: `at<&Throttle::bore>`.
template <auto pointer>
inline constexpr Member at = detail::describe<decltype(detail::member_type(pointer))>(
    detail::access<detail::OwnerOf<pointer>, detail::MemberAt<pointer>>, &detail::usual<pointer>);

/// A whole struct as a group, for the root of a document.
template <class T>
inline constexpr const GroupType& group_type = detail::plain_group<T>;

/// A closed set of kinds, for a part that stands alone in a document.
template <class Kinds>
inline constexpr const TaggedType& tagged_type = detail::TaggedOf<Kinds>::type;

}  // namespace windwall::fields
