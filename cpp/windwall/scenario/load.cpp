#include "windwall/scenario/load.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/scenario/complete.hpp"
#include "windwall/scenario/currency.hpp"
#include "windwall/scenario/migrate.hpp"
#include "windwall/scenario/read_limits.hpp"
#include "windwall/scenario/read_menu.hpp"
#include "windwall/scenario/read_outings.hpp"
#include "windwall/scenario/torque_curve_conflicts.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::Cursor;
using fields::Document;
using fields::ReadContext;

// Where nothing can be read, because the text is no object or of a version that is not known.
bool cannot_be_read(const Cursor& root) {
    if (!root.is_object()) {
        root.complain("a scenario is expected here, an object; found " + root.is_what());
        return true;
    }
    if (!root.has("format")) {
        root.complain_about_key(
            "format", "is missing; write \"format\": " + fields::in_quotes(current_format));
        return false;
    }
    const auto format = root["format"];
    const auto* text = format.text();
    if (text && *text == current_format) return false;
    format.complain((text ? fields::in_quotes(*text) : format.is_what()) +
                    " is no format known here; this version reads " +
                    fields::in_quotes(current_format));
    return true;
}

// An older document, brought up to date; it no longer has places.
Document up_to_date(Document document) {
    const auto* root = document.root();
    if (!root || !root->is_object() || !root->contains("format")) return document;
    if (root->at("format") == current_format) return document;
    auto migrated = migrate(*root, migrations(), current_format);
    return migrated ? Document::made(*std::move(migrated)) : document;
}

void read_header(Scenario& made, const Cursor& root) {
    if (root.has("$schema")) made.schema = fields::read_text(root["$schema"]).value_or("");
    for (const auto& row : Header::rows())
        if (root.has(row.key)) fields::read_member(row, row.member.of(&made.header), root[row.key]);
}

fields::Known keys_beside_the_vehicle() {
    fields::Known keys{"format", "$schema"};
    for (const auto& row : Header::rows())
        keys.push_back(row.key);
    for (const auto key : {"limits", "correlations", "observed", "outings", "upgrades"})
        keys.push_back(key);
    return keys;
}

std::shared_ptr<const fields::Json> source(const Cursor& cursor) {
    return std::make_shared<const fields::Json>(cursor.json());
}

void read_upgrades_and_limits(Scenario& made, const Cursor& root) {
    std::vector<vehicle::Vehicle> layouts{made.vehicle};
    made.currency = currency_of_budget(root.findings().notes);
    if (root.has("upgrades")) {
        auto read = read_menu(root["upgrades"], made.vehicle);
        made.menu = std::move(read.menu);
        made.currency = std::move(read.currency);
        layouts = std::move(read.layouts);
    }
    if (!root.has("limits")) return;
    made.limits_source = source(root["limits"]);
    made.limits = read_limits(root["limits"], layouts, InvalidAddresses(root.findings().problems));
}

void read_root(Scenario& made, const Cursor& root) {
    if (cannot_be_read(root)) return;
    read_header(made, root);
    fields::read(fields::group_type<vehicle::Vehicle>, &made.vehicle, root,
                 keys_beside_the_vehicle());
    complete(made, root.findings().notes);
    read_upgrades_and_limits(made, root);
    if (root.findings().problems.empty())
        find_torque_curve_conflicts(made.vehicle, made.menu, root);
    if (root.has("correlations") && root.findings().problems.empty()) {
        made.notes = root.findings().notes;
        made.correlations_source = source(root["correlations"]);
        made.correlations = read_correlations(root["correlations"], made);
    }
    if (root.has("observed")) {
        made.observed_source = source(root["observed"]);
        made.observed = read_observations(root["observed"], made.vehicle);
    }
    if (!root.has("outings")) return;
    made.outings_source = source(root["outings"]);
    made.outings = read_outings(root["outings"], made.menu, made.vehicle);
}

void reserve_words(fields::Ids& ids) {
    ids.reserve(fields::group_type<Header>);
    ids.reserve(fields::group_type<Terms>);
    for (const auto word : {"format", "limits", "correlations", "observed", "outings", "legs",
                            "upgrades", "id", "kind"})
        ids.reserve(word);
}

}  // namespace

Loaded load(std::string_view text, std::string_view file) {
    Loaded loaded{.scenario = {}, .problems = {}, .file = std::string(file)};
    ReadContext findings(fields::group_type<vehicle::Vehicle>);
    reserve_words(findings.ids);
    const auto document = up_to_date(Document::parse(text, findings.problems));
    Scenario made;
    if (document.root()) read_root(made, Cursor(document, findings));
    loaded.problems = std::move(findings.problems);
    if (!loaded.problems.empty()) return loaded;
    made.notes = std::move(findings.notes);
    loaded.scenario = std::move(made);
    return loaded;
}

}  // namespace windwall::scenario
