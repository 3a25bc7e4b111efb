#include "windwall/fields/canonical.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace windwall::fields {
namespace {

// Walks a struct beside a default-made one, to tell a default from a number somebody chose.
struct Walk {
    const Provenance& notes;

    Json number(const Row& row, double value, const double* usual,
                const std::string& address) const {
        const auto* note = notes.find(address);
        // A number that was changed since has no sigma unless its note was changed with it.
        const bool known = note ? note->value == value : usual && *usual == value;
        return {value, known ? sigma_of(row, note) : 0.0};
    }

    Json optional_number(const Row& row, const std::optional<double>& held,
                         const std::optional<double>& usual, const std::string& address) const {
        if (!held) return nullptr;
        return number(row, *held, usual ? &*usual : nullptr, address);
    }

    Json list(const Row& row, const std::vector<double>& values, const std::string& address) const {
        auto list = Json::array();
        for (const double value : values)
            list.push_back(
                number(row, value, nullptr, joined(address, std::to_string(list.size() + 1))));
        return list;
    }

    static Json table(const Row& row, const Columns& columns) {
        auto object = Json::object();
        for (std::size_t at = 0; at < columns.column.size(); ++at)
            object[std::string(row.columns[at].key)] = columns.column[at];
        return object;
    }

    Json optional_group(const GroupType& type, void* member, const std::string& address) const {
        if (!type.peek(member)) return nullptr;
        return group(type, type.open(member), type.fresh(), address, Json::object());
    }

    Json part(const TaggedType& type, void* member, const std::string& address, Json into) const {
        const auto kind = type.index(member);
        into["kind"] = type.kinds[kind];
        const auto& chosen = *type.types[kind];
        return group(chosen, type.get(member), chosen.fresh(), address, std::move(into));
    }

    Json parts(const PartsType& type, void* member, const std::string& address) const {
        auto list = Json::array();
        for (std::size_t at = 0; at < type.size(member); ++at) {
            const auto& id = type.id(member, at);
            list.push_back(
                part(*type.tagged, type.part(member, at), joined(address, id), Json{{"id", id}}));
        }
        return list;
    }

    Json member(const Row& row, void* made, void* usual, const std::string& address) const {
        const auto& type = row.member;
        switch (type.shape) {
            case FieldType::number:
                return number(row, *static_cast<double*>(made), static_cast<double*>(usual),
                              address);
            case FieldType::optional_number:
                return optional_number(row, *static_cast<std::optional<double>*>(made),
                                       *static_cast<std::optional<double>*>(usual), address);
            case FieldType::flag: return *static_cast<bool*>(made);
            case FieldType::text: break;
            case FieldType::choice: return type.choice->names[type.choice->get(made)];
            case FieldType::list:
                return list(row, *static_cast<std::vector<double>*>(made), address);
            case FieldType::table: return table(row, *static_cast<Columns*>(made));
            case FieldType::group: return group(*type.group, made, usual, address, Json::object());
            case FieldType::optional_group: return optional_group(*type.group, made, address);
            case FieldType::tagged: return part(*type.tagged, made, address, Json::object());
            case FieldType::parts: return parts(*type.parts, made, address);
        }
        return nullptr;
    }

    Json group(const GroupType& type, void* made, const void* fresh, const std::string& address,
               Json into) const {
        void* usual = const_cast<void*>(fresh);
        for (const auto& row : type.rows()) {
            if (row.member.shape == FieldType::text) continue;
            into[std::string(row.key)] =
                member(row, row.member.of(made), row.member.of(usual), joined(address, row.key));
        }
        return into;
    }
};

}  // namespace

Json physics_of(const GroupType& group, const void* from, const Provenance& notes,
                std::string_view address) {
    // Only looked at; the types underneath know no const.
    return Walk{notes}.group(group, const_cast<void*>(from), group.fresh(), std::string(address),
                             Json::object());
}

}  // namespace windwall::fields
