#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"

namespace windwall::fields {
namespace {

// The id of a part if it can serve as its address; otherwise a problem, and the number serves.
std::optional<std::string> read_id(const Cursor& part) {
    if (!part.has("id")) {
        part.complain_about_key("id", "is missing; every part has an id of its own");
        return std::nullopt;
    }
    const auto value = part["id"];
    const auto* id = value.text();
    auto& ids = part.findings().ids;
    const auto wrong = id ? ids.violation(*id) : "an id is a text, found " + value.is_what();
    if (!wrong.empty()) {
        value.complain(wrong);
        return std::nullopt;
    }
    ids.take(*id);
    return *id;
}

void read_part(const PartsType& type, void* list, const Cursor& part) {
    if (!part.is_object()) {
        part.complain("a part is expected here, an object with id and kind; found " +
                      part.is_what());
        return;
    }
    const auto id = read_id(part);
    const auto addressed = id ? part.known_as(*id) : part;
    addressed.note({});
    read_tagged(*type.tagged, type.append(list, id.value_or("")), addressed, {"id"});
}

}  // namespace

void read_parts(const Row& row, void* into, const Cursor& list) {
    if (!list.is_list()) {
        list.complain("a list of parts is expected here, found " + list.is_what());
        return;
    }
    if (list.size() == 0 && row.need == Need::required)
        list.complain("at least one part is needed");
    if (list.size() > row.count.most) {
        list.complain("at most " + std::to_string(row.count.most) + " parts are allowed, found " +
                      std::to_string(list.size()));
        return;
    }
    list.note({});
    row.member.parts->clear(into);
    for (std::size_t at = 0; at < list.size(); ++at)
        read_part(*row.member.parts, into, list.entry(at));
}

}  // namespace windwall::fields
