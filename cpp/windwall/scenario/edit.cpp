#include "windwall/scenario/edit.hpp"

#include "windwall/fields/cursor.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/apply_anchor_sigma.hpp"
#include "windwall/scenario/relations.hpp"
#include "windwall/scenario/result_address.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::scenario {
namespace {

using fields::Cursor;
using fields::ReadContext;

std::string unknown_input(const Scenario& scenario, std::string_view address,
                          std::string violation) {
    if (!is_result(scenario.vehicle, address)) return violation;
    return fields::in_quotes(address) + " is a result, not an input: it follows from the others";
}

// A text, a flag or nothing, read exactly as from a file.
std::optional<Value> read_as_in_file(const FieldPath& path, fields::Json value,
                                     ReadContext& findings) {
    auto root = fields::Json::object();
    root[path.text()] = std::move(value);
    const auto document = fields::Document::made(std::move(root));
    return read_value(path, Cursor(document, findings)[path.text()]);
}

std::optional<double> read_si(const FieldPath& path, double number, const std::string& address,
                              ReadContext& findings) {
    const auto read = fields::read_si(number, path.row());
    if (read) {
        findings.notes.set(address, fields::note_of(*read));
        return number;
    }
    findings.problems.add(address, {}, read.violation);
    return std::nullopt;
}

// What a file would hold in its place.
fields::Json as_json(const FieldPath& path, const Given& given) {
    const Overloaded json{
        [](std::monostate) { return fields::Json(); },
        [](const auto& value) { return fields::Json(value); },
        [&](const std::vector<double>& list) {
            if (path.row().member.type != fields::FieldType::list) return fields::Json(list);
            auto texts = fields::Json::array();
            for (const double number : list)
                texts.push_back(fields::format(number, path.row().measure));
            return texts;
        },
    };
    return std::visit(json, given);
}

std::optional<Value> read_given(const FieldPath& path, const Given& given, ReadContext& findings) {
    const auto* number = std::get_if<double>(&given);
    if (!number || !path.is_number()) return read_as_in_file(path, as_json(path, given), findings);
    if (const auto si = read_si(path, *number, path.text(), findings)) return *si;
    return std::nullopt;
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
    if (!value) return;
    put(*path, *value, made.vehicle);
    take_notes(made.notes, findings.notes, address);
    if (std::holds_alternative<std::monostate>(*value)) made.notes.erase(address);
    changed.push_back(*path);
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
    for (const auto& [address, given] : changes)
        change(*made.scenario, address, given, findings, changed);
    if (findings.problems.empty()) check_rules(*made.scenario, changed, findings.problems);
    if (findings.problems.empty()) check_upgrades(*made.scenario, findings.problems);
    made.problems = std::move(findings.problems);
    if (!made.problems.empty())
        made.scenario.reset();
    else
        apply_anchor_sigma(made.scenario->vehicle, made.scenario->notes);
    return made;
}

}  // namespace windwall::scenario
