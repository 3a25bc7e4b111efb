#include "windwall/fields/read.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/visit.hpp"

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

namespace {

// Reads a value into a member of this row.
struct Reader {
    const Row& row;
    const Cursor& value;

    void operator()(double& number) const {
        if (const auto read = read_number(row, value)) number = *read;
    }
    void operator()(std::optional<double>& number) const { number = read_number(row, value); }
    void operator()(bool& flag) const { read_flag(flag, value); }
    void operator()(std::string& text) const {
        if (auto read = read_text(value)) text = *std::move(read);
    }
    void operator()(const ChoiceRef<void>& choice) const {
        if (const auto index = read_word(choice.type.names, value)) choice.set(*index);
    }
    void operator()(std::vector<double>& list) const { read_list(row, list, value); }
    void operator()(Columns& table) const { read_table(row, table, value); }
    void operator()(const GroupRef<void>& group) const {
        value.note({});
        read(group.type, group.open(), value);
    }
    void operator()(const TaggedRef<void>& tagged) const {
        value.note({});
        read_tagged(tagged.type, tagged.member, value);
    }
    void operator()(const PartsRef<void>& parts) const { read_parts(row, parts.member, value); }
};

}  // namespace

void read_member(const Row& row, void* member, const Cursor& value) {
    visit_member(row.member, member, Reader{row, value});
}

}  // namespace windwall::fields
