#include "windwall/scenario/read_part.hpp"

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
    return fields::read_id(part, "part",
                           [&](auto word) { return part.findings().ids.violation(word); });
}

}  // namespace windwall::scenario
