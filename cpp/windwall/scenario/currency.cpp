#include "windwall/scenario/currency.hpp"

#include "windwall/fields/quantity.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

constexpr std::string_view budget_address = "goal/budget";

bool is_priced(const Menu& menu) {
    return std::ranges::any_of(menu, [](const Upgrade& one) { return one.terms.cost.has_value(); });
}

std::string_view currency_of(const fields::Note* note) {
    return note && note->unit ? note->unit->text : std::string_view{};
}

}  // namespace

std::string currency_of_budget(const fields::Provenance& notes) {
    return std::string(currency_of(notes.find(budget_address)));
}

std::string read_currency(std::span<const fields::Cursor> cursors, std::string currency) {
    for (const auto& cursor : cursors) {
        if (!cursor.is_object() || !cursor.has("cost")) continue;
        const auto cost = cursor["cost"];
        const auto unit = currency_of(cost.findings().notes.find(cost.address()));
        if (unit.empty()) continue;
        if (currency.empty()) currency = unit;
        if (currency != unit)
            cost.complain("one file counts in one currency, and the sums above are in " + currency);
    }
    return currency;
}

std::string currency_left(const Scenario& scenario) {
    return is_priced(scenario.menu) ? scenario.currency : currency_of_budget(scenario.notes);
}

void count_in_currency(const Scenario& scenario, const std::string& address, bool bare,
                       fields::ReadContext& findings) {
    const auto* read = findings.notes.find(address);
    if (currency_of(read).empty() || scenario.currency.empty()) return;
    auto note = *read;
    if (bare) {
        note.unit = fields::find_unit(fields::Dimension::money, scenario.currency);
        note.text = fields::format(note.value, *note.unit);
        findings.notes.set(address, std::move(note));
    } else if (is_priced(scenario.menu) && currency_of(&note) != scenario.currency) {
        findings.problems.add(
            address, {},
            "one file counts in one currency, and its costs are in " + scenario.currency);
    }
}

}  // namespace windwall::scenario
