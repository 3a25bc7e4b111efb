#pragma once
#include "windwall/fields/member_types.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace windwall::fields {

namespace detail {

template <class T>
concept Checked = requires(const T& made) {
    { made.check() } -> std::same_as<std::optional<Violation>>;
};

template <class T>
concept Described = requires {
    T::description;
};

template <class T>
constexpr std::string_view description() {
    if constexpr (Described<T>) return T::description;
    return {};
}

template <class T>
constexpr std::span<const ClassLimit> limits() {
    if constexpr (requires { T::class_limits; }) return T::class_limits;
    return {};
}

template <class T>
constexpr std::span<const ClassCaution> cautions() {
    if constexpr (requires { T::class_cautions; }) return T::class_cautions;
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
    description<T>(),
    &T::rows,
    &check<T>,
    access<T, Itself>,
    [](void* member) { return member; },
    &fresh<T>,
    limits<T>(),
    cautions<T>(),
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
    limits<T>(),
    cautions<T>(),
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
inline constexpr ListType list_type{
    &plain_group<T>,
    [](const void* list) { return static_cast<const std::vector<T>*>(list)->size(); },
    [](const void* list, std::size_t at) -> const void* {
        return &(*static_cast<const std::vector<T>*>(list))[at];
    },
};

template <class T>
concept Shown = std::is_integral_v<T> || requires(const T& value) {
    requires std::is_arithmetic_v<typename T::value_type> ||
        std::is_same_v<typename T::value_type, std::string>;
};

/// As the widest of its sort.
template <class T>
Plain plain(const void* member) {
    const T& held = *static_cast<const T*>(member);
    if constexpr (std::is_integral_v<T>) {
        return static_cast<long>(held);
    } else if constexpr (is_optional<T>) {
        return held ? std::optional<long>(*held) : std::nullopt;
    } else if constexpr (std::is_integral_v<typename T::value_type>) {
        return std::vector<long>(held.begin(), held.end());
    } else {
        return std::vector<typename T::value_type>(held.begin(), held.end());
    }
}

template <class T>
concept GroupList = requires(T list) {
    T::value_type::rows();
    list.push_back(list.front());
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
    } else if constexpr (Shown<T>) {
        made.plain = &plain<T>;
    } else if constexpr (GroupList<T>) {
        made.list = &list_type<typename T::value_type>;
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
