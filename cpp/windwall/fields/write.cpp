#include "windwall/fields/write.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/quantity.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::fields {
namespace {

// One member to write: the row, the member, its default, and what the document said.
struct Written {
    const Row& row;
    void* member;
    void* usual;  // the same member of a default-made struct
    const Provenance& notes;
    std::string address;

    bool given() const { return notes.given(address); }
    bool optional() const { return row.need != Need::required && !given(); }
    template <class T>
    const T& as() const {
        return *static_cast<const T*>(member);
    }
    // Nobody stated it and it is what it would be anyway.
    template <class T>
    bool left_out() const {
        return optional() && as<T>() == *static_cast<const T*>(usual);
    }
};

using Maybe = std::optional<Json>;

Json write_rows(const GroupType& group, void* from, const Provenance& notes,
                std::string_view address, Json into);

Json bare(double number) { return Json::parse(shortest(number)); }

Json number(double value, const Row& row, const Note* note) {
    if (note && note->unit && note->value == value)
        return note->bare ? Json::parse(note->text) : Json(note->text);
    const auto& unit = unit_of(row.measure);
    return unit.text.empty() ? bare(value) : Json(format(value, unit));
}

Maybe optional_number(const Written& written) {
    const auto& held = written.as<std::optional<double>>();
    if (!held) return std::nullopt;
    return number(*held, written.row, written.notes.find(written.address));
}

Json list(const Written& written) {
    auto list = Json::array();
    for (const double value : written.as<std::vector<double>>()) {
        const auto address = joined(written.address, std::to_string(list.size() + 1));
        list.push_back(number(value, written.row, written.notes.find(address)));
    }
    return list;
}

const Unit& column_unit(const Written& written, const Column& column) {
    const auto* note =
        written.notes.find(joined(written.address, "columns/" + std::string(column.key)));
    return note && note->unit ? *note->unit : unit_of(column.measure);
}

Json table(const Written& written) {
    const auto& columns = written.as<Columns>().column;
    auto units = Json::object();
    auto rows = Json::array();
    if (!columns.empty())
        rows.get_ref<Json::array_t&>().resize(columns.front().size(), Json::array());
    for (std::size_t at = 0; at < columns.size(); ++at) {
        const auto& unit = column_unit(written, written.row.columns[at]);
        units[std::string(written.row.columns[at].key)] = unit.text;
        for (std::size_t cell = 0; cell < columns[at].size(); ++cell)
            rows[cell].push_back(Json::parse(shortest(columns[at][cell], unit)));
    }
    return {{"columns", std::move(units)}, {"rows", std::move(rows)}};
}

Maybe group(const Written& written) {
    const auto& type = *written.row.member.group;
    if (!type.peek(written.member)) return std::nullopt;
    auto object =
        write_rows(type, type.open(written.member), written.notes, written.address, Json::object());
    if (object.empty() && written.row.member.shape == FieldType::group && written.optional())
        return std::nullopt;
    return object;
}

Json part(const TaggedType& tagged, void* member, const Provenance& notes, std::string_view address,
          Json into) {
    const auto kind = tagged.index(member);
    into["kind"] = tagged.kinds[kind];
    return write_rows(*tagged.types[kind], tagged.get(member), notes, address, std::move(into));
}

Maybe tagged(const Written& written) {
    const auto& type = *written.row.member.tagged;
    auto object = part(type, written.member, written.notes, written.address, Json::object());
    const bool as_usual = type.index(written.member) == type.index(written.usual);
    if (object.size() == 1 && as_usual && written.optional()) return std::nullopt;
    return object;
}

Maybe parts(const Written& written) {
    const auto& type = *written.row.member.parts;
    auto list = Json::array();
    for (std::size_t at = 0; at < type.size(written.member); ++at) {
        const auto& id = type.id(written.member, at);
        list.push_back(part(*type.tagged, type.part(written.member, at), written.notes,
                            joined(written.address, id), Json{{"id", id}}));
    }
    if (list.empty() && written.optional()) return std::nullopt;
    return list;
}

Maybe member(const Written& written) {
    const auto& type = written.row.member;
    switch (type.shape) {
        case FieldType::number:
            if (written.left_out<double>()) return std::nullopt;
            return number(written.as<double>(), written.row, written.notes.find(written.address));
        case FieldType::optional_number: return optional_number(written);
        case FieldType::flag:
            if (written.left_out<bool>()) return std::nullopt;
            return written.as<bool>();
        case FieldType::text:
            if (written.left_out<std::string>()) return std::nullopt;
            return written.as<std::string>();
        case FieldType::choice: {
            const auto at = type.choice->get(written.member);
            if (written.optional() && at == type.choice->get(written.usual)) return std::nullopt;
            return type.choice->names[at];
        }
        case FieldType::list:
            if (written.left_out<std::vector<double>>()) return std::nullopt;
            return list(written);
        case FieldType::table:
            if (written.left_out<Columns>()) return std::nullopt;
            return table(written);
        case FieldType::group:
        case FieldType::optional_group: return group(written);
        case FieldType::tagged: return tagged(written);
        case FieldType::parts: return parts(written);
    }
    return std::nullopt;
}

Json write_rows(const GroupType& group, void* from, const Provenance& notes,
                std::string_view address, Json into) {
    // Only looked at; the types underneath know no const.
    void* usual = const_cast<void*>(group.fresh());
    for (const auto& row : group.rows()) {
        const Written written{row, row.member.of(from), row.member.of(usual), notes,
                              joined(address, row.key)};
        if (auto value = member(written)) into[std::string(row.key)] = *std::move(value);
    }
    return into;
}

}  // namespace

Json write(const GroupType& group, const void* from, const Provenance& notes,
           std::string_view address) {
    return write_rows(group, const_cast<void*>(from), notes, address, Json::object());
}

}  // namespace windwall::fields
