#include "windwall/bindings/rows_values.hpp"

#include "windwall/fields/row.hpp"

#include <pybind11/stl.h>

#include <optional>
#include <string>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using fields::FieldType;
using fields::Row;

namespace {

template <class T>
const T& seen_as(const void* member) {
    return *static_cast<const T*>(member);
}

py::object text(std::string_view words) { return py::str(words.data(), words.size()); }

py::dict part(const fields::TaggedType& tagged, void* member) {
    const std::size_t kind = tagged.index(member);
    py::dict made = values_of(*tagged.types[kind], tagged.get(member));
    made["kind"] = text(tagged.kinds[kind]);
    return made;
}

py::dict parts(const fields::PartsType& type, void* list) {
    py::dict made;
    for (std::size_t at = 0; at < type.size(list); ++at) {
        made[py::str(type.id(list, at))] = part(*type.tagged, type.part(list, at));
    }
    return made;
}

py::dict table(const Row& row, const fields::Columns& columns) {
    py::dict made;
    for (std::size_t at = 0; at < columns.column.size(); ++at) {
        made[text(row.columns[at].key)] = py::cast(columns.column[at]);
    }
    return made;
}

py::object group(const fields::GroupType& type, const void* member) {
    const void* there = type.peek(member);
    return there ? values_of(type, there) : py::object(py::none());
}

py::object value(const Row& row, void* member) {
    switch (row.member.shape) {
        case FieldType::number: return py::float_(seen_as<double>(member));
        case FieldType::optional_number: return py::cast(seen_as<std::optional<double>>(member));
        case FieldType::flag: return py::bool_(seen_as<bool>(member));
        case FieldType::text: return py::str(seen_as<std::string>(member));
        case FieldType::choice:
            return text(row.member.choice->names[row.member.choice->get(member)]);
        case FieldType::list: return py::cast(seen_as<std::vector<double>>(member));
        case FieldType::table: return table(row, seen_as<fields::Columns>(member));
        case FieldType::group:
        case FieldType::optional_group: return group(*row.member.group, member);
        case FieldType::tagged: return part(*row.member.tagged, member);
        case FieldType::parts: return parts(*row.member.parts, member);
    }
    return py::none();
}

}  // namespace

py::dict values_of(const fields::GroupType& group, const void* from) {
    py::dict made;
    // Rows find members of structs they may change; here they are only read.
    void* owner = const_cast<void*>(from);
    for (const Row& row : group.rows())
        made[text(row.key)] = value(row, row.member.of(owner));
    return made;
}

}  // namespace windwall::bindings
