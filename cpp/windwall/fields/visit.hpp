#pragma once
#include "windwall/fields/problems.hpp"
#include "windwall/fields/row.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

/// One walk over the rows of a struct. A visitor is called with each member as what it is: double,
/// std::optional<double>, bool, std::string, std::vector<double> or Columns by reference, anything
/// else as one of the references below. `Void` is `const void` where things are only looked at.
namespace windwall::fields {

/// A nested struct, or an optional one.
template <class Void>
struct GroupRef {
    const GroupType& type;
    Void* member;
    bool may_be_empty{};

    const GroupType& group() const { return type; }
    Void* get() const { return type.peek(member); }  // null where it is empty
    void* open() const { return type.open(member); }
};

/// One word of a few.
template <class Void>
struct ChoiceRef {
    const ChoiceType& type;
    Void* member;

    std::size_t index() const { return type.get(member); }
    std::string_view word() const { return type.names[index()]; }
    void set(std::size_t index) const { type.set(member, index); }
};

/// One of several kinds.
template <class Void>
struct TaggedRef {
    const TaggedType& type;
    Void* member;

    std::size_t index() const { return type.index(member); }
    std::string_view kind() const { return type.kinds[index()]; }
    const GroupType& group() const { return *type.types[index()]; }
    Void* get() const { return type.get(member); }
};

/// A list of parts with ids.
template <class Void>
struct PartsRef {
    const PartsType& type;
    Void* member;

    std::size_t size() const { return type.size(member); }
    const std::string& id(std::size_t at) const { return type.id(member, at); }
    TaggedRef<Void> part(std::size_t at) const { return {*type.tagged, type.part(member, at)}; }
    std::optional<std::size_t> find(std::string_view id) const {
        for (std::size_t at = 0; at < size(); ++at)
            if (this->id(at) == id) return at;
        return std::nullopt;
    }
};

namespace detail {

template <class T, class Void>
auto& seen_as(Void* member) {
    using Seen = std::conditional_t<std::is_const_v<Void>, const T, T>;
    return *static_cast<Seen*>(member);
}

}  // namespace detail

/// One member, where it lives.
template <class Void, class Visitor>
decltype(auto) visit_member(const Member& as, Void* member, Visitor&& visitor) {
    using detail::seen_as;
    switch (as.type) {
        case FieldType::optional_number: return visitor(seen_as<std::optional<double>>(member));
        case FieldType::flag: return visitor(seen_as<bool>(member));
        case FieldType::text: return visitor(seen_as<std::string>(member));
        case FieldType::choice: return visitor(ChoiceRef<Void>{*as.choice, member});
        case FieldType::list: return visitor(seen_as<std::vector<double>>(member));
        case FieldType::table: return visitor(seen_as<Columns>(member));
        case FieldType::group: return visitor(GroupRef<Void>{*as.group, member, false});
        case FieldType::optional_group: return visitor(GroupRef<Void>{*as.group, member, true});
        case FieldType::tagged: return visitor(TaggedRef<Void>{*as.tagged, member});
        case FieldType::parts: return visitor(PartsRef<Void>{*as.parts, member});
        case FieldType::number: break;
    }
    return visitor(seen_as<double>(member));
}

/// The member of a row in the struct that owns it.
template <class Void, class Visitor>
decltype(auto) visit(const Row& row, Void* owner, Visitor&& visitor) {
    return visit_member(row.member, row.member.of(owner), std::forward<Visitor>(visitor));
}

/// The member of a row as it is by default, for those who ask only what it is.
template <class Visitor>
decltype(auto) visit_default(const Row& row, Visitor&& visitor) {
    return visit_member(row.member, row.member.usual(), std::forward<Visitor>(visitor));
}

/// Every row of a struct beside its member.
template <class Void, class Visitor>
void visit(const GroupType& group, Void* object, Visitor&& visitor) {
    for (const auto& row : group.rows())
        visit(row, object, [&]<class T>(T&& member) { visitor(row, std::forward<T>(member)); });
}

/// Every struct that is there, from the outermost inwards: `visitor(group, object, address)`.
template <class Visitor>
void visit_groups(const GroupType& group, const void* object, const std::string& address,
                  Visitor&& visitor) {
    const auto inner = [&](const auto& inside, const std::string& at) {
        if (inside.get()) visit_groups(inside.group(), inside.get(), at, visitor);
    };
    visitor(group, object, address);
    visit(group, object, [&]<class Member>(const Row& row, const Member& member) {
        const auto at = joined(address, row.key);
        if constexpr (requires { member.part(0); }) {
            for (std::size_t i = 0; i < member.size(); ++i)
                inner(member.part(i), joined(at, member.id(i)));
        } else if constexpr (requires { member.group(); }) {
            inner(member, at);
        }
    });
}

}  // namespace windwall::fields
