#include "windwall/bindings/rows_values.hpp"

#include "windwall/fields/visit.hpp"

#include <pybind11/stl.h>

namespace windwall::bindings {

namespace py = pybind11;
using fields::ChoiceRef;
using fields::GroupRef;
using fields::PartsRef;
using fields::TaggedRef;

namespace {

py::str text(std::string_view words) { return {words.data(), words.size()}; }

// A member as a plain object of Python.
struct PlainObject {
    const fields::Row& row;

    py::object operator()(const fields::Columns& table) const {
        py::dict made;
        for (std::size_t at = 0; at < table.column.size(); ++at)
            made[text(row.columns[at].key)] = py::cast(table.column[at]);
        return made;
    }
    py::object operator()(const ChoiceRef<const void>& choice) const { return text(choice.word()); }
    py::object operator()(const GroupRef<const void>& group) const {
        if (!group.get()) return py::none();
        return values_of(group.type, group.get());
    }
    py::object operator()(const TaggedRef<const void>& part) const {
        py::dict made = values_of(part.group(), part.get());
        made["kind"] = text(part.kind());
        return made;
    }
    py::object operator()(const PartsRef<const void>& parts) const {
        py::dict made;
        for (std::size_t at = 0; at < parts.size(); ++at)
            made[text(parts.id(at))] = (*this)(parts.part(at));
        return made;
    }
    py::object operator()(const auto& plain) const { return py::cast(plain); }
};

py::list groups(const fields::ListType& type, const void* list) {
    py::list made;
    for (std::size_t at = 0; at < type.size(list); ++at)
        made.append(values_of(*type.group, type.entry(list, at)));
    return made;
}

py::object value(const fields::Row& row, const void* owner) {
    const fields::Member& member = row.member;
    if (member.plain) return py::cast(member.plain(member.of(owner)));
    if (member.list) return groups(*member.list, member.of(owner));
    return fields::visit(row, owner, PlainObject{row});
}

}  // namespace

py::dict values_of(const fields::GroupType& group, const void* from) {
    py::dict made;
    for (const fields::Row& row : group.rows())
        made[text(row.key)] = value(row, from);
    return made;
}

}  // namespace windwall::bindings
