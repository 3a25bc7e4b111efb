#include "windwall/scenario/edit.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/complete.hpp"
#include "windwall/scenario/currency.hpp"
#include "windwall/scenario/relations.hpp"
#include "windwall/scenario/result_address.hpp"
#include "windwall/scenario/solve_rated.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

using fields::ReadContext;

std::string unknown_input(const Scenario& scenario, std::string_view address,
                          std::string violation) {
    if (!is_result(scenario.vehicle, address)) return violation;
    return fields::in_quotes(address) + " is a result, not an input: it follows from the others";
}

void take_notes(fields::Provenance& into, const fields::Provenance& from,
                const std::string& address) {
    into.erase(address);
    for (const auto& [at, note] : from)
        if (fields::is_within(at, address)) into.set(at, note);
}

void change(Scenario& made, const std::string& address, const Given& given, ReadContext& findings,
            std::vector<FieldPath>& changed) {
    const auto path = find_input(made.vehicle, address);
    if (!path) {
        findings.problems.add(address, {}, unknown_input(made, address, path.violation));
        return;
    }
    const auto value = read_given(*path, given, findings);
    if (path->row().measure.dimension == fields::Dimension::money)
        count_in_currency(made, address, std::holds_alternative<double>(given), findings);
    if (!value) return;
    put(*path, *value, made.vehicle);
    take_notes(made.notes, findings.notes, address);
    if (std::holds_alternative<std::monostate>(*value)) made.notes.erase(address);
    changed.push_back(*path);
}

// Whether a change is of what the values of the stock engine were found from.
bool finds_anew(const Changes& changes) {
    return std::ranges::any_of(changes, [](const auto& one) {
        return fields::is_within(one.first, of_engine("rated")) ||
               fields::is_within(one.first, of_engine("design"));
    });
}

// Whether it is of the engine or its fuel, which are no longer those of the stock vehicle then.
bool changes_engine(const Changes& changes) {
    return std::ranges::any_of(changes, [](const auto& one) {
        return fields::is_within(one.first, "engine") || fields::is_within(one.first, "fuel");
    });
}

std::vector<std::string> addresses(const Changes& changes) {
    std::vector<std::string> all;
    for (const auto& [address, given] : changes)
        all.push_back(address);
    return all;
}

void check_rules(Scenario& made, const std::vector<FieldPath>& changed,
                 fields::Problems& problems) {
    std::vector<std::string> said;
    for (const auto& path : changed) {
        const auto broken = path.broken_rule(&made.vehicle);
        if (!broken || std::ranges::find(said, *broken) != said.end()) continue;
        said.push_back(*broken);
        problems.add(path.text(), {}, *broken);
    }
}

void check_upgrades(const Scenario& made, fields::Problems& problems) {
    for (std::size_t at = 0; at < made.menu.size(); ++at) {
        const auto resolved = install(made, with_required(made.menu, at));
        if (const auto* why = std::get_if<std::string>(&resolved))
            problems.add("upgrades/" + made.menu[at].id, {}, *why);
    }
}

}  // namespace

fields::Expected<Answer> get(const Scenario& scenario, std::string_view address) {
    const auto path = find_input(scenario.vehicle, address);
    if (!path)
        return fields::Expected<Answer>::refused(unknown_input(scenario, address, path.violation));
    const auto value = value_at(*path, scenario.vehicle);
    if (const auto* number = std::get_if<double>(&value)) return Answer(*number);
    if (const auto* flag = std::get_if<bool>(&value)) return Answer(*flag);
    if (const auto* text = std::get_if<std::string>(&value)) return Answer(*text);
    if (const auto* list = std::get_if<std::vector<double>>(&value)) return Answer(*list);
    if (const auto* word = std::get_if<Word>(&value))
        return Answer(std::string(path->row().member.choice->names[word->number]));
    return Answer(std::monostate{});
}

Loaded set(const Scenario& scenario, const Changes& changes) {
    Loaded made{.scenario = scenario, .problems = {}, .file = "set"};
    ReadContext findings(fields::group_type<vehicle::Vehicle>);
    std::vector<FieldPath> changed;
    const bool of_the_engine = changes_engine(changes);
    if (of_the_engine && !finds_anew(changes)) keep_solved(*made.scenario, addresses(changes));
    for (const auto& [address, given] : changes)
        change(*made.scenario, address, given, findings, changed);
    if (findings.problems.empty()) check_rules(*made.scenario, changed, findings.problems);
    if (findings.problems.empty()) check_upgrades(*made.scenario, findings.problems);
    made.problems = std::move(findings.problems);
    if (!made.problems.empty())
        made.scenario.reset();
    else if (of_the_engine)
        complete(*made.scenario, made.scenario->notes);
    if (!made.scenario) return made;
    made.scenario->currency = currency_left(*made.scenario);
    drop_impossible_correlations(*made.scenario);
    return made;
}

}  // namespace windwall::scenario
