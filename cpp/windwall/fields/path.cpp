#include "windwall/fields/address.hpp"

#include <stdexcept>

namespace windwall::fields {
namespace {

void* of_this_kind(const TaggedType& tagged, void* member, std::size_t kind) {
    if (tagged.index(member) != kind)
        throw std::logic_error(
            "another kind of part stands here than when the address was resolved");
    return tagged.get(member);
}

void* entry_of(const PartsType& parts, void* list, const Path::Step& step) {
    if (step.entry >= parts.size(list))
        throw std::logic_error("fewer parts stand here than when the address was resolved");
    return of_this_kind(*parts.tagged, parts.part(list, step.entry), step.kind);
}

void* number_in(std::optional<double>& held, bool fill) {
    if (!held && fill) held = 0.0;
    return held ? &*held : nullptr;
}

void* entry_of(std::vector<double>& list, std::size_t at) {
    if (at >= list.size())
        throw std::logic_error("fewer entries stand here than when the address was resolved");
    return &list[at];
}

// The struct or number one step down; null where an optional is empty and stays so.
void* step_down(const Path::Step& step, void* owner, bool fill) {
    const auto& type = step.row->member;
    void* member = type.of(owner);
    switch (type.shape) {
        case FieldType::optional_number:
            return number_in(*static_cast<std::optional<double>*>(member), fill);
        case FieldType::list:
            return entry_of(*static_cast<std::vector<double>*>(member), step.entry);
        case FieldType::group: return member;
        case FieldType::optional_group:
            return fill || type.group->peek(member) ? type.group->open(member) : nullptr;
        case FieldType::tagged: return of_this_kind(*type.tagged, member, step.kind);
        case FieldType::parts: return entry_of(*type.parts, member, step);
        default: return member;
    }
}

}  // namespace

double* Path::follow(void* root, bool fill) const {
    void* here = root;
    for (std::size_t at = 0; at < size_ && here; ++at)
        here = step_down(steps_[at], here, fill);
    return static_cast<double*>(here);
}

double& Path::at(void* root) const { return *follow(root, true); }

std::optional<double> Path::get(const void* root) const {
    // Nothing is written without filling; the types underneath know no const.
    const double* number = follow(const_cast<void*>(root), false);
    return number ? std::optional(*number) : std::nullopt;
}

Path Path::then(Step step, std::string_view word) const {
    if (size_ == deepest) throw std::logic_error("rows are nested deeper than addresses go");
    auto longer = *this;
    longer.steps_[longer.size_++] = step;
    if (!longer.text_.empty()) longer.text_ += '/';
    longer.text_ += word;
    return longer;
}

}  // namespace windwall::fields
