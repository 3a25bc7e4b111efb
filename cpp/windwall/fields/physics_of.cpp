#include "windwall/fields/physics_of.hpp"

#include "windwall/fields/visit.hpp"

#include <nlohmann/json.hpp>

namespace windwall::fields {
namespace {

Json physics(const GroupType& group, const void* object, const Provenance& notes,
             const std::string& address, Json into);

// A member beside the default of its row, to tell a default from a number somebody chose.
struct Physics {
    const Row& row;
    const Provenance& notes;
    std::string address;

    static Json with_sigma(const Row& row, double value, const double* usual, const Note* note) {
        // A number that was changed since has no sigma unless its note was changed with it.
        const bool known = note ? note->value == value : usual && *usual == value;
        return {value, known ? sigma_of(row, note) : 0.0};
    }
    template <class T>
    const T& usual() const {
        return *static_cast<const T*>(row.member.usual());
    }

    Json operator()(double value) const {
        return with_sigma(row, value, &usual<double>(), notes.find(address));
    }
    Json operator()(const std::optional<double>& held) const {
        if (!held) return nullptr;
        const auto& usually = usual<std::optional<double>>();
        return with_sigma(row, *held, usually ? &*usually : nullptr, notes.find(address));
    }
    Json operator()(bool flag) const { return flag; }
    Json operator()(const std::string&) const { return nullptr; }
    Json operator()(const ChoiceRef<const void>& choice) const { return choice.word(); }
    Json operator()(const std::vector<double>& values) const {
        auto list = Json::array();
        for (const double value : values)
            list.push_back(with_sigma(
                row, value, nullptr, notes.find(joined(address, std::to_string(list.size() + 1)))));
        return list;
    }
    Json operator()(const Columns& columns) const {
        auto object = Json::object();
        for (std::size_t at = 0; at < columns.column.size(); ++at)
            object[std::string(row.columns[at].key)] = columns.column[at];
        return object;
    }
    Json operator()(const GroupRef<const void>& group) const {
        if (!group.get()) return nullptr;
        return physics(group.type, group.get(), notes, address, Json::object());
    }
    Json part(const TaggedRef<const void>& part, const std::string& at, Json into) const {
        into["kind"] = part.kind();
        return physics(part.group(), part.get(), notes, at, std::move(into));
    }
    Json operator()(const TaggedRef<const void>& tagged) const {
        return part(tagged, address, Json::object());
    }
    Json operator()(const PartsRef<const void>& parts) const {
        auto list = Json::array();
        for (std::size_t at = 0; at < parts.size(); ++at)
            list.push_back(
                part(parts.part(at), joined(address, parts.id(at)), Json{{"id", parts.id(at)}}));
        return list;
    }
};

Json physics(const GroupType& group, const void* object, const Provenance& notes,
             const std::string& address, Json into) {
    for (const auto& row : group.rows())
        if (row.member.type != FieldType::text)
            into[std::string(row.key)] =
                visit(row, object, Physics{row, notes, joined(address, row.key)});
    return into;
}

}  // namespace

Json physics_of(const GroupType& group, const void* from, const Provenance& notes,
                std::string_view address) {
    return physics(group, from, notes, std::string(address), Json::object());
}

}  // namespace windwall::fields
