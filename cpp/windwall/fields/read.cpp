#include "windwall/fields/read.hpp"

#include "windwall/fields/plain_text.hpp"

#include <vector>

namespace windwall::fields {
namespace {

// The rules across fields are asked only about values that are all right one by one.
void check_rules(const GroupType& group, const void* made, const Cursor& object) {
    if (const auto broken = group.check(made))
        object.complain_about_key(broken->key, broken->sentence);
}

void read_rows(const GroupType& group, void* into, const Cursor& object, const Known& known) {
    const auto before = object.findings().problems.size();
    check_keys(object, group.rows(), known);
    for (const auto& row : group.rows())
        if (object.has(row.key)) read_member(row, row.member.of(into), object[row.key]);
    if (object.findings().problems.size() == before) check_rules(group, into, object);
}

}  // namespace

void read(const GroupType& group, void* into, const Cursor& object, const Known& known) {
    if (!object.is_object()) {
        object.complain("an object is expected here, found " + object.is_what());
        return;
    }
    read_rows(group, into, object, known);
}

void read_tagged(const TaggedType& tagged, void* into, const Cursor& object, const Known& known) {
    if (!object.is_object()) {
        object.complain("an object with a kind is expected here, found " + object.is_what());
        return;
    }
    if (!object.has("kind")) {
        object.complain_about_key("kind", "is missing; it is one of " + choices(tagged.kinds));
        return;
    }
    const auto kind = read_word(tagged.kinds, object["kind"]);
    if (!kind) return;
    auto keys = known;
    keys.push_back("kind");
    read_rows(*tagged.types[*kind], tagged.emplace(into, *kind), object, keys);
}

void read_member(const Row& row, void* member, const Cursor& value) {
    switch (row.member.shape) {
        case FieldType::number:
            if (const auto number = read_number(row, value))
                *static_cast<double*>(member) = *number;
            break;
        case FieldType::optional_number:
            *static_cast<std::optional<double>*>(member) = read_number(row, value);
            break;
        case FieldType::flag: read_flag(*static_cast<bool*>(member), value); break;
        case FieldType::text:
            if (auto text = read_text(value)) *static_cast<std::string*>(member) = *std::move(text);
            break;
        case FieldType::choice:
            if (const auto at = read_word(row.member.choice->names, value))
                row.member.choice->set(member, *at);
            break;
        case FieldType::list:
            read_list(row, *static_cast<std::vector<double>*>(member), value);
            break;
        case FieldType::table: read_table(row, *static_cast<Columns*>(member), value); break;
        case FieldType::group:
        case FieldType::optional_group:
            value.note({});
            read(*row.member.group, row.member.group->open(member), value);
            break;
        case FieldType::tagged:
            value.note({});
            read_tagged(*row.member.tagged, member, value);
            break;
        case FieldType::parts: read_parts(row, member, value); break;
    }
}

}  // namespace windwall::fields
