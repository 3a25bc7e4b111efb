#include "windwall/fields/write.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/visit.hpp"

#include <nlohmann/json.hpp>

namespace windwall::fields {
namespace {

using Written = std::optional<Json>;  // nothing where a member is left out

Json write_rows(const GroupType& group, const void* from, const Provenance& notes,
                std::string_view address, Json into);

Json bare(double number) { return Json::parse(shortest(number)); }

Json number(double value, const Row& row, const Note* note) {
    if (note && note->unit && note->value == value)
        return note->bare ? Json::parse(note->text) : Json(note->text);
    const auto& unit = unit_of(row.measure);
    return unit.text.empty() ? bare(value) : Json(format(value, unit));
}

// Writes the member of one row, as the document said it.
struct Writer {
    const Row& row;
    const Provenance& notes;
    std::string address;

    bool optional() const { return row.need != Need::required && !notes.given(address); }

    // Nobody stated it and it is what it would be anyway.
    template <class T>
    bool left_out(const T& value) const {
        return optional() && value == *static_cast<const T*>(row.member.usual());
    }
    Written operator()(double value) const {
        if (left_out(value)) return std::nullopt;
        return number(value, row, notes.find(address));
    }
    Written operator()(const std::optional<double>& held) const {
        if (!held) return std::nullopt;
        return number(*held, row, notes.find(address));
    }
    template <class T>
    requires std::same_as<T, bool> || std::same_as<T, std::string> Written
    operator()(const T& value) const {
        return left_out(value) ? std::nullopt : Written(value);
    }
    Written operator()(const ChoiceRef<const void>& choice) const {
        if (optional() && choice.index() == choice.type.get(row.member.usual()))
            return std::nullopt;
        return choice.word();
    }
    Written operator()(const std::vector<double>& values) const {
        if (left_out(values)) return std::nullopt;
        auto list = Json::array();
        for (const double value : values)
            list.push_back(
                number(value, row, notes.find(joined(address, std::to_string(list.size() + 1)))));
        return list;
    }
    Written operator()(const Columns& table) const {
        if (left_out(table)) return std::nullopt;
        auto units = Json::object();
        const auto count = table.empty() ? 0 : table.column.front().size();
        auto rows = Json(count, Json::array());
        for (std::size_t at = 0; at < table.column.size(); ++at) {
            const auto& unit = column_unit(row.columns[at]);
            units[std::string(row.columns[at].key)] = unit.text;
            for (std::size_t cell = 0; cell < count; ++cell)
                rows[cell].push_back(Json::parse(shortest(table.column[at][cell], unit)));
        }
        return Json{{"columns", std::move(units)}, {"rows", std::move(rows)}};
    }
    const Unit& column_unit(const Column& column) const {
        const auto* note = notes.find(joined(address, "columns/" + std::string(column.key)));
        return note && note->unit ? *note->unit : unit_of(column.measure);
    }
    Written operator()(const GroupRef<const void>& group) const {
        if (!group.get()) return std::nullopt;
        auto object = write_rows(group.type, group.get(), notes, address, Json::object());
        if (object.empty() && !group.may_be_empty && optional()) return std::nullopt;
        return object;
    }
    Json part(const TaggedRef<const void>& part, const std::string& at, Json into) const {
        into["kind"] = part.kind();
        return write_rows(part.group(), part.get(), notes, at, std::move(into));
    }
    Written operator()(const TaggedRef<const void>& tagged) const {
        auto object = part(tagged, address, Json::object());
        const bool as_usual = tagged.index() == tagged.type.index(row.member.usual());
        if (object.size() == 1 && as_usual && optional()) return std::nullopt;
        return object;
    }
    Written operator()(const PartsRef<const void>& parts) const {
        auto list = Json::array();
        for (std::size_t at = 0; at < parts.size(); ++at)
            list.push_back(
                part(parts.part(at), joined(address, parts.id(at)), Json{{"id", parts.id(at)}}));
        if (list.empty() && optional()) return std::nullopt;
        return list;
    }
};

Json write_rows(const GroupType& group, const void* from, const Provenance& notes,
                std::string_view address, Json into) {
    for (const auto& row : group.rows())
        if (auto value = visit(row, from, Writer{row, notes, joined(address, row.key)}))
            into[std::string(row.key)] = *std::move(value);
    return into;
}

}  // namespace

Json write(const GroupType& group, const void* from, const Provenance& notes,
           std::string_view address) {
    return write_rows(group, from, notes, address, Json::object());
}

}  // namespace windwall::fields
