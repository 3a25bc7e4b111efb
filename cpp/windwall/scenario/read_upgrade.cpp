#include "windwall/scenario/read_upgrade.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/scenario/read_part.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::scenario {
namespace {

using fields::Cursor;

constexpr std::size_t most_ids = 64;
constexpr std::size_t most_parts = 16;

const fields::Known& known_keys() {
    static const fields::Known keys{"id",     "requires", "excludes", "replace", "remove",
                                    "insert", "set",      "choose",   "scale",   "add"};
    return keys;
}

// The id if it can serve in addresses; otherwise a problem, and the number serves.
std::optional<std::string> read_id(const Cursor& object, std::vector<std::string>& taken) {
    auto id = fields::read_id(object, "upgrade", [&](std::string_view word) {
        if (std::ranges::find(taken, word) == taken.end()) return fields::Ids::word_violation(word);
        return fields::in_quotes(word) + " is the id of another upgrade";
    });
    if (id) taken.push_back(*id);
    return id;
}

std::vector<std::string> read_ids(const Cursor& list) {
    std::vector<std::string> ids;
    if (!fields::is_list_of("ids", most_ids, list)) return ids;
    for (std::size_t at = 0; at < list.size(); ++at) {
        const auto entry = list.entry(at);
        if (const auto* id = entry.text())
            ids.push_back(*id);
        else
            entry.complain("an id is a text, found " + entry.is_what());
    }
    return ids;
}

void read_replaces(const Cursor& object, Upgrade& into) {
    if (!object.is_object()) {
        object.complain("an object {id: part} is expected here, found " + object.is_what());
        return;
    }
    if (object.size() > most_parts) {
        object.complain("at most 16 parts are replaced by one upgrade");
        return;
    }
    for (const auto id : object.keys()) {
        const auto part = object[id];
        if (part.is_object() && part.has("id") && part["id"].json() != id)
            part["id"].complain("the new part takes the id " + fields::in_quotes(id) +
                                " of the old one");
        if (auto read = read_part(part))
            into.actions.push_back({Replace{std::string(id), *std::move(read)}, std::string(id)});
    }
}

void read_removes(const Cursor& list, Upgrade& into) {
    std::size_t number = 0;
    for (auto& id : read_ids(list))
        into.actions.push_back({Remove{std::move(id)}, std::to_string(++number)});
}

std::optional<Insert> read_insert(const Cursor& object) {
    if (!object.is_object()) {
        object.complain("an object with a part and after or before is expected here, found " +
                        object.is_what());
        return std::nullopt;
    }
    fields::check_keys(object, {}, {"part", "after", "before"});
    if (object.has("after") == object.has("before"))
        object.complain_about_key("after", "say after or before which part, one of the two");
    Insert made;
    made.after = object.has("after");
    const auto anchors = made.after ? "after" : "before";
    if (object.has(anchors)) {
        made.anchors = read_ids(object[anchors]);
        if (object[anchors].is_list() && object[anchors].size() == 0)
            object[anchors].complain("at least one id is needed");
    }
    if (!object.has("part")) {
        object.complain_about_key("part", "is missing; it is the part to insert");
        return std::nullopt;
    }
    const auto part = object["part"];
    auto read = read_part(part);
    const auto id = read_part_id(part);
    if (!read || !id) return std::nullopt;
    made.part = *std::move(read);
    made.id = *id;
    return made;
}

void read_inserts(const Cursor& list, Upgrade& into) {
    if (!list.is_list()) {
        list.complain("a list of parts and where they go is expected here, found " +
                      list.is_what());
        return;
    }
    if (list.size() > most_parts) {
        list.complain("at most 16 parts are inserted by one upgrade");
        return;
    }
    for (std::size_t at = 0; at < list.size(); ++at) {
        auto made = read_insert(list.entry(at));
        if (!made) continue;
        const bool twice = std::ranges::any_of(into.actions, [&](const Action& other) {
            return other.as<Insert>() && other.as<Insert>()->id == made->id;
        });
        if (twice) list.entry(at)["part"]["id"].complain("this upgrade inserts it twice");
        into.actions.push_back({*std::move(made), std::to_string(at + 1)});
    }
}

void read_body(const Cursor& object, Upgrade& into) {
    into.source = std::make_shared<const fields::Json>(object.json());
    fields::read(fields::group_type<Terms>, &into.terms, object, known_keys());
    if (object.has("requires")) into.required_ids = read_ids(object["requires"]);
    if (object.has("excludes")) into.excluded_ids = read_ids(object["excludes"]);
    if (object.has("replace")) read_replaces(object["replace"], into);
    if (object.has("remove")) read_removes(object["remove"], into);
    if (object.has("insert")) read_inserts(object["insert"], into);
}

}  // namespace

Cursor read_upgrade(const Cursor& object, Upgrade& into, std::vector<std::string>& taken_ids) {
    if (!object.is_object()) {
        object.complain("an upgrade is expected here, an object; found " + object.is_what());
        return object;
    }
    const auto id = read_id(object, taken_ids);
    const auto addressed = id ? object.known_as(*id) : object;
    if (id) into.id = *id;
    read_body(addressed, into);
    return addressed;
}

Cursor cursor_of(const Cursor& object, const Action& action) {
    const auto under = object[verb_name(action.verb())];
    return under.is_list() ? under.entry(std::stoul(action.key) - 1) : under[action.key];
}

}  // namespace windwall::scenario
