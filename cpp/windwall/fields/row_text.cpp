#include "windwall/fields/row_text.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"

namespace windwall::fields {
namespace {

bool is_number(const Row& row) {
    return row.member.shape == FieldType::number ||
           row.member.shape == FieldType::optional_number || row.member.shape == FieldType::list;
}

std::string usual_number(const Row& row, const void* member) {
    if (row.member.shape == FieldType::number)
        return format(*static_cast<const double*>(member), row.measure);
    const auto& held = *static_cast<const std::optional<double>*>(member);
    return held ? format(*held, row.measure) : "";
}

}  // namespace

std::string default_of(const Row& row, const GroupType& owner) {
    if (row.need != Need::with_default) return {};
    const void* member = row.member.of(const_cast<void*>(owner.fresh()));
    switch (row.member.shape) {
        case FieldType::number:
        case FieldType::optional_number: return usual_number(row, member);
        case FieldType::flag: return *static_cast<const bool*>(member) ? "true" : "false";
        case FieldType::choice:
            return std::string(row.member.choice->names[row.member.choice->get(member)]);
        case FieldType::text: return *static_cast<const std::string*>(member);
        default: return {};
    }
}

std::string default_sigma_of(const Row& row) {
    if (row.sigma == 0) return {};
    auto text = shortest(row.sigma);
    if (!row.measure.unit.empty()) text += " " + std::string(row.measure.unit);
    return text;
}

std::string description_of(const Row& row, const GroupType& owner) {
    auto text = std::string(row.sentence);
    if (!text.ends_with('.')) text += ".";
    if (is_number(row)) text += " From " + range_text(row) + ".";
    const auto usual = default_of(row, owner);
    if (usual.empty()) return text;
    const auto sigma = default_sigma_of(row);
    text += " Usually " + usual + (sigma.empty() ? "" : ", give or take " + sigma);
    return text + (row.source.empty() ? "." : " (" + std::string(row.source) + ").");
}

}  // namespace windwall::fields
