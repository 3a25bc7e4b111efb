#include "windwall/bindings/rows_units.hpp"
#include "windwall/bindings/rows_values.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/fields/units.hpp"

#include <pybind11/pybind11.h>

#include <string>
#include <string_view>

namespace windwall::bindings {

namespace py = pybind11;
using fields::Row;

namespace {

py::str text(std::string_view words) { return {words.data(), words.size()}; }

py::dict kinds(const fields::TaggedType& tagged) {
    py::dict made;
    for (std::size_t at = 0; at < tagged.kinds.size(); ++at) {
        made[text(tagged.kinds[at])] = rows_of(*tagged.types[at]);
    }
    return made;
}

py::list words(const fields::ChoiceType& choice) {
    py::list made;
    for (const std::string_view word : choice.names)
        made.append(text(word));
    return made;
}

}  // namespace

py::dict row_of(const Row& row) {
    py::dict made;
    made["sentence"] = text(row.sentence);
    if (row.member.group) made["rows"] = rows_of(*row.member.group)["rows"];
    if (row.member.list) made["rows"] = rows_of(*row.member.list->group)["rows"];
    if (row.member.tagged) made["kinds"] = kinds(*row.member.tagged);
    if (row.member.parts) made["kinds"] = kinds(*row.member.parts->tagged);
    if (row.member.choice) made["words"] = words(*row.member.choice);
    if (!row.into.empty()) made["into"] = text(row.into);
    if (row.symbol.empty()) return made;
    made["symbol"] = text(row.symbol);
    made["dimension"] = text(fields::name_of(row.measure.dimension));
    made["unit"] = text(row.measure.unit);
    made["si"] = text(si_unit(row.measure.dimension));
    return made;
}

py::dict rows_of(const fields::GroupType& group) {
    py::dict rows;
    for (const Row& row : group.rows())
        rows[text(row.key)] = row_of(row);
    py::dict made;
    made["description"] = text(group.description);
    made["rows"] = rows;
    return made;
}

}  // namespace windwall::bindings
