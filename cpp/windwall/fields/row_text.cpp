#include "windwall/fields/row_text.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/fields/visit.hpp"

namespace windwall::fields {
namespace {

bool has_range(const Row& row) {
    return row.member.type == FieldType::number || row.member.type == FieldType::optional_number ||
           row.member.type == FieldType::list;
}

// Of a default, which is a round number in some unit, and not always in that of its row.
constexpr int digits_of_a_default = 6;

/// As people would state it: 60 psi, though the double lies a hair beside that.
std::string stated(double si, const Measure& measure) {
    const auto& unit = unit_of(measure);
    auto text = shortest(near(from_si(si, unit), digits_of_a_default));
    if (!unit.text.empty()) text += " " + std::string(unit.text);
    return text;
}

struct DefaultText {
    const Row& row;

    std::string operator()(double number) const { return stated(number, row.measure); }
    std::string operator()(const std::optional<double>& held) const {
        return held ? stated(*held, row.measure) : "";
    }
    std::string operator()(bool flag) const { return flag ? "true" : "false"; }
    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(const ChoiceRef<const void>& choice) const {
        return std::string(choice.word());
    }
    std::string operator()(const auto&) const { return {}; }
};

}  // namespace

std::string default_of(const Row& row) {
    if (row.need != Need::with_default) return {};
    return visit_default(row, DefaultText{row});
}

std::string default_sigma_of(const Row& row) {
    if (row.sigma == 0) return {};
    auto text = shortest(row.sigma);
    if (!row.measure.unit.empty()) text += " " + std::string(row.measure.unit);
    return text;
}

std::string description_of(const Row& row) {
    auto text = std::string(row.sentence);
    if (!text.ends_with('.')) text += ".";
    if (has_range(row))
        text += (row.whole ? " A whole number from " : " From ") + range_text(row) + ".";
    const auto usual = default_of(row);
    if (!row.chosen.empty())
        text += " Chosen by " + std::string(row.chosen) + " where that is stated.";
    if (usual.empty()) return text;
    const auto sigma = default_sigma_of(row);
    text += " Usually " + usual + (sigma.empty() ? "" : ", give or take " + sigma);
    return text + (row.source.empty() ? "." : " (" + std::string(row.source) + ").");
}

}  // namespace windwall::fields
