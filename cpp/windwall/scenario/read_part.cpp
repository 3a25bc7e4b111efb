#include "windwall/scenario/read_part.hpp"

#include "windwall/fields/ids.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::scenario {
namespace {

using fields::Cursor;
using fields::tagged_type;
using fields::TaggedType;

bool knows(const TaggedType& tagged, std::string_view kind) {
    return std::ranges::find(tagged.kinds, kind) != tagged.kinds.end();
}

std::vector<std::string_view> all_kinds() {
    std::vector<std::string_view> all;
    for (const auto* tagged : {&tagged_type<charge::Part>, &tagged_type<driveline::Part>})
        all.insert(all.end(), tagged->kinds.begin(), tagged->kinds.end());
    return all;
}

template <class Kinds>
Part read_as(const Cursor& part) {
    Kinds made;
    fields::read_tagged(tagged_type<Kinds>, &made, part, {"id"});
    return made;
}

const std::string* read_kind(const Cursor& part) {
    if (!part.is_object()) {
        part.complain("a part is expected here, an object with a kind; found " + part.is_what());
    } else if (!part.has("kind")) {
        part.complain_about_key("kind", "is missing; it is one of " + fields::choices(all_kinds()));
    } else if (fields::read_word(all_kinds(), part["kind"])) {
        return part["kind"].text();
    }
    return nullptr;
}

}  // namespace

std::optional<Part> read_part(const Cursor& part) {
    const auto* kind = read_kind(part);
    if (!kind) return std::nullopt;
    part.note({});
    if (knows(tagged_type<charge::Part>, *kind)) return read_as<charge::Part>(part);
    return read_as<driveline::Part>(part);
}

std::optional<std::string> read_part_id(const Cursor& part) {
    if (!part.is_object()) return std::nullopt;
    if (!part.has("id")) {
        part.complain_about_key("id", "is missing; every part has an id of its own");
        return std::nullopt;
    }
    const auto value = part["id"];
    const auto* id = value.text();
    const auto wrong =
        id ? part.findings().ids.violation(*id) : "an id is a text, found " + value.is_what();
    if (wrong.empty()) return *id;
    value.complain(wrong);
    return std::nullopt;
}

std::string word_complaint(std::string_view id) {
    struct Nothing {
        static std::span<const fields::Row> rows() { return {}; }
    };
    return fields::Ids(fields::group_type<Nothing>).violation(id);
}

}  // namespace windwall::scenario
