#include "windwall/web/answer_text.hpp"

#include "windwall/fields/visit.hpp"

#include <nlohmann/json.hpp>

#include <variant>

namespace windwall::web {

using nlohmann::json;

namespace {

json object(const fields::GroupType& group, const void* from);

// A member as JSON has it; a number that is not finite becomes null when it is written.
struct Plain {
    const fields::Row& row;

    json operator()(const fields::Columns& table) const {
        json made = json::object();
        for (std::size_t at = 0; at < table.column.size(); ++at)
            made[std::string(row.columns[at].key)] = table.column[at];
        return made;
    }
    json operator()(const fields::ChoiceRef<const void>& choice) const { return choice.word(); }
    json operator()(const fields::GroupRef<const void>& group) const {
        return group.get() ? object(group.type, group.get()) : json();
    }
    json operator()(const fields::TaggedRef<const void>& part) const {
        json made = object(part.group(), part.get());
        made["kind"] = part.kind();
        return made;
    }
    json operator()(const fields::PartsRef<const void>& parts) const {
        json made = json::object();
        for (std::size_t at = 0; at < parts.size(); ++at)
            made[parts.id(at)] = (*this)(parts.part(at));
        return made;
    }
    json operator()(const std::optional<double>& number) const {
        return number ? json(*number) : json();
    }
    json operator()(const auto& plain) const { return plain; }
};

json objects(const fields::ListType& type, const void* list) {
    json made = json::array();
    for (std::size_t at = 0; at < type.size(list); ++at)
        made.push_back(object(*type.group, type.entry(list, at)));
    return made;
}

// Members that are no inputs: counts, words, lists of them.
struct OfResults {
    template <class T>
    json operator()(const std::optional<T>& there) const {
        return there ? json(*there) : json();
    }
    json operator()(const auto& plain) const { return plain; }
};

json value(const fields::Row& row, const void* owner) {
    const fields::Member& member = row.member;
    if (member.plain) return std::visit(OfResults{}, member.plain(member.of(owner)));
    if (member.list) return objects(*member.list, member.of(owner));
    return fields::visit(row, owner, Plain{row});
}

json object(const fields::GroupType& group, const void* from) {
    json made = json::object();
    for (const fields::Row& row : group.rows())
        made[std::string(row.key)] = value(row, from);
    return made;
}

}  // namespace

std::string answer_text(const fields::GroupType& group, const void* from) {
    return object(group, from).dump();
}

}  // namespace windwall::web
