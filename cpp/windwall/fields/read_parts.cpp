#include "windwall/fields/read.hpp"

namespace windwall::fields {
namespace {

void read_part(const PartsType& type, void* list, const Cursor& part) {
    if (!part.is_object()) {
        part.complain("a part is expected here, an object with id and kind; found " +
                      part.is_what());
        return;
    }
    auto& ids = part.findings().ids;
    const auto id = read_id(part, "part", [&](auto word) { return ids.violation(word); });
    if (id) ids.take(*id);
    const auto addressed = id ? part.known_as(*id) : part;
    addressed.note({});
    read_tagged(*type.tagged, type.append(list, id.value_or("")), addressed, {"id"});
}

}  // namespace

void read_parts(const Row& row, void* into, const Cursor& list) {
    if (!is_list_of("parts", row.count.most, list)) return;
    if (list.size() == 0 && row.need == Need::required)
        list.complain("at least one part is needed");
    list.note({});
    row.member.parts->clear(into);
    for (std::size_t at = 0; at < list.size(); ++at)
        read_part(*row.member.parts, into, list.entry(at));
}

}  // namespace windwall::fields
