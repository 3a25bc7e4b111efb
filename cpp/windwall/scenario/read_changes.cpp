#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/scenario/read_upgrade.hpp"
#include "windwall/scenario/result_address.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace windwall::scenario {
namespace {

using fields::Cursor;
using fields::Dimension;
using fields::Measure;

constexpr std::size_t most_changes = 64;
constexpr std::size_t most_values = 16;
constexpr double largest_factor = 1000;

std::string is_a_result(std::string_view address) {
    return fields::in_quotes(address) +
           " is a result, not an input: it follows from the others; it can stand in limits";
}

// Why an address leads nowhere; into a part, perhaps, that only another upgrade brings.
std::string nowhere(const Menu& menu, std::string_view address, const std::string& violation) {
    for (const auto& upgrade : menu)
        for (const auto& action : upgrade.actions)
            if (const auto* insert = action.as<Insert>())
                if (fields::is_within(address, fields::joined(list_key(insert->part), insert->id)))
                    return "that part comes with the upgrade \"" + upgrade.id +
                           "\", which this one would have to require";
    return violation;
}

// The path that a key leads to, or a problem, or silence where that has a problem already.
std::optional<FieldPath> path_of(const Cursor& change, std::string_view address,
                                 const Surroundings& surroundings) {
    // After the last problem that is kept, no words are sought for another.
    if (change.findings().problems.full()) return std::nullopt;
    auto path = find_input(surroundings.layout, address);
    if (path) return *std::move(path.value);
    if (is_result(surroundings.layout, address))
        change.complain(is_a_result(address));
    else if (!surroundings.quiet && !surroundings.invalid.touches(address))
        change.complain(nowhere(surroundings.menu, address, path.violation));
    return std::nullopt;
}

// What a difference of two such quantities is measured in.
Measure difference_of(const Measure& measure) {
    switch (measure.dimension) {
        case Dimension::temperature: return fields::temperature_difference("K");
        case Dimension::absolute_pressure:
        case Dimension::gauge_pressure: return fields::pressure_difference("kPa");
        default: return measure;
    }
}

bool takes_numbers(const FieldPath& path, const Cursor& change, std::string_view verb) {
    if (path.is_number()) return true;
    change.complain("only a number can be " + std::string(verb));
    return false;
}

using Read = std::optional<decltype(Action::what)>;

Read read_set(const Cursor& change, FieldPath path) {
    auto value = read_value(path, change);
    if (!value) return std::nullopt;
    return Set{std::move(path), *std::move(value)};
}

Read read_choose(const Cursor& change, FieldPath path) {
    if (!change.is_list() || change.size() < 2 || change.size() > most_values) {
        change.complain("a list of 2 to 16 values to choose from is expected here, found " +
                        (change.is_list() ? std::to_string(change.size()) : change.is_what()));
        return std::nullopt;
    }
    std::vector<Value> values;
    for (std::size_t at = 0; at < change.size(); ++at)
        if (auto value = read_value(path, change.entry(at))) values.push_back(*std::move(value));
    if (values.size() != change.size()) return std::nullopt;
    return Choose{std::move(path), std::move(values)};
}

Read read_scale(const Cursor& change, FieldPath path) {
    if (!takes_numbers(path, change, "scaled")) return std::nullopt;
    const auto factor = fields::read_quantity(fields::number(), change);
    if (!factor) return std::nullopt;
    if (factor->value > 0 && factor->value <= largest_factor)
        return Scale{path, fields::range_in_si(path.row()), factor->value};
    change.complain("a factor above 0 and up to 1000 is expected, found " +
                    fields::printable(factor->text));
    return std::nullopt;
}

Read read_add(const Cursor& change, FieldPath path) {
    if (!takes_numbers(path, change, "added to")) return std::nullopt;
    const auto amount = fields::read_quantity(difference_of(path.row().measure), change);
    if (!amount) return std::nullopt;
    return Add{path, fields::range_in_si(path.row()), amount->value};
}

using Reader = Read (*)(const Cursor&, FieldPath);

void read_verb(const Cursor& object, std::string_view verb, Reader reader, Upgrade& into,
               const Surroundings& surroundings) {
    if (!object.has(verb)) return;
    const auto changes = object[verb];
    if (!fields::is_object_of("addresses", most_changes, changes)) return;
    for (const auto address : changes.keys())
        if (auto path = path_of(changes[address], address, surroundings))
            if (auto what = reader(changes[address], *std::move(path)))
                into.actions.push_back({*std::move(what), std::string(address)});
}

}  // namespace

void read_changes(const Cursor& object, Upgrade& into, const Surroundings& surroundings) {
    if (!object.is_object()) return;
    read_verb(object, "set", read_set, into, surroundings);
    read_verb(object, "choose", read_choose, into, surroundings);
    read_verb(object, "scale", read_scale, into, surroundings);
    read_verb(object, "add", read_add, into, surroundings);
}

}  // namespace windwall::scenario
