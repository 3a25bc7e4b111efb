#include "windwall/scenario/edit.hpp"

#include "windwall/fields/cursor.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
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
std::optional<Value> read_as_in_file(const Spot& spot, fields::Json value, ReadContext& findings) {
    auto root = fields::Json::object();
    root[spot.address] = std::move(value);
    const auto document = fields::Document::made(std::move(root));
    return read_value(spot, Cursor(document, findings)[spot.address]);
}

std::optional<double> read_si(const Spot& spot, double number, const std::string& address,
                              ReadContext& findings) {
    const auto read = fields::read_si(number, *spot.row);
    if (read) {
        findings.notes.set(address, fields::note_of(*read));
        return number;
    }
    findings.problems.add(address, {}, read.violation);
    return std::nullopt;
}

struct Reader {
    const Spot& spot;
    ReadContext& findings;

    std::optional<Value> operator()(std::monostate) const {
        return read_as_in_file(spot, nullptr, findings);
    }
    std::optional<Value> operator()(double number) const {
        if (!spot.is_number()) return read_as_in_file(spot, number, findings);
        if (const auto si = read_si(spot, number, spot.address, findings)) return *si;
        return std::nullopt;
    }
    std::optional<Value> operator()(bool flag) const {
        return read_as_in_file(spot, flag, findings);
    }
    std::optional<Value> operator()(const std::string& text) const {
        return read_as_in_file(spot, text, findings);
    }
    std::optional<Value> operator()(const std::vector<double>& list) const {
        auto texts = fields::Json::array();
        const bool takes = spot.row->member.shape == fields::FieldType::list && !spot.entry;
        for (const double number : list)
            texts.push_back(takes ? fields::format(number, spot.row->measure) : std::string());
        return read_as_in_file(spot, std::move(texts), findings);
    }
};

void take_notes(fields::Provenance& into, const fields::Provenance& from,
                const std::string& address) {
    into.erase(address);
    for (const auto& [at, note] : from)
        if (at == address || at.starts_with(address + "/")) into.set(at, note);
}

void change(Scenario& made, const std::string& address, const Given& given, ReadContext& findings,
            std::vector<Spot>& changed) {
    const auto spot = find_spot(made.vehicle, address);
    if (!spot) {
        findings.problems.add(address, {}, unknown_input(made, address, spot.violation));
        return;
    }
    const auto value = std::visit(Reader{*spot, findings}, given);
    if (!value) return;
    put(*spot, *value, made.vehicle);
    take_notes(made.notes, findings.notes, address);
    if (std::holds_alternative<std::monostate>(*value)) made.notes.erase(address);
    changed.push_back(*spot);
}

void check_rules(Scenario& made, const std::vector<Spot>& changed, fields::Problems& problems) {
    std::vector<std::string> said;
    for (const auto& spot : changed) {
        const auto broken = broken_rule(spot, made.vehicle);
        if (!broken || std::ranges::find(said, *broken) != said.end()) continue;
        said.push_back(*broken);
        problems.add(spot.address, {}, *broken);
    }
}

void check_upgrades(const Scenario& made, fields::Problems& problems) {
    for (std::size_t at = 0; at < made.menu.size(); ++at) {
        const auto resolved = install(made, with_needs(made.menu, at));
        if (const auto* why = std::get_if<std::string>(&resolved))
            problems.add("upgrades/" + made.menu[at].id, {}, *why);
    }
}

}  // namespace

fields::Expected<Answer> get(const Scenario& scenario, std::string_view address) {
    const auto spot = find_spot(scenario.vehicle, address);
    if (!spot)
        return fields::Expected<Answer>::refused(unknown_input(scenario, address, spot.violation));
    const auto value = value_at(*spot, scenario.vehicle);
    if (const auto* number = std::get_if<double>(&value)) return Answer(*number);
    if (const auto* flag = std::get_if<bool>(&value)) return Answer(*flag);
    if (const auto* text = std::get_if<std::string>(&value)) return Answer(*text);
    if (const auto* list = std::get_if<std::vector<double>>(&value)) return Answer(*list);
    if (const auto* word = std::get_if<Word>(&value))
        return Answer(std::string(spot->row->member.choice->names[word->number]));
    return Answer(std::monostate{});
}

Loaded set(const Scenario& scenario, const Changes& changes) {
    Loaded made{.scenario = scenario, .problems = {}, .file = "set"};
    ReadContext findings(fields::group_type<vehicle::Vehicle>);
    std::vector<Spot> changed;
    for (const auto& [address, given] : changes)
        change(*made.scenario, address, given, findings, changed);
    if (findings.problems.empty()) check_rules(*made.scenario, changed, findings.problems);
    if (findings.problems.empty()) check_upgrades(*made.scenario, findings.problems);
    made.problems = std::move(findings.problems);
    if (!made.problems.empty()) made.scenario.reset();
    return made;
}

}  // namespace windwall::scenario
