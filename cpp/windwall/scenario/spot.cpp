#include "windwall/scenario/spot.hpp"

#include "windwall/fields/address.hpp"
#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"

#include <algorithm>
#include <charconv>

namespace windwall::scenario {
namespace {

using fields::FieldType;
using fields::GroupType;
using fields::Row;

const GroupType& root_type() { return fields::group_type<vehicle::Vehicle>; }

std::string_view take_word(std::string_view& address) {
    const auto end = std::min(address.find('/'), address.size());
    const auto word = address.substr(0, end);
    address.remove_prefix(std::min(end + 1, address.size()));
    return word;
}

const Row* find_row(const GroupType& group, std::string_view key) {
    for (const auto& row : group.rows())
        if (row.key == key) return &row;
    return nullptr;
}

std::optional<std::size_t> find_part(const fields::PartsType& parts, void* list,
                                     std::string_view id) {
    for (std::size_t at = 0; at < parts.size(list); ++at)
        if (parts.id(list, at) == id) return at;
    return std::nullopt;
}

// The kinds that can stand where a step leads, or null for a plain group.
const fields::TaggedType* kinds_of(const Row& row) {
    return row.member.parts ? row.member.parts->tagged : row.member.tagged;
}

const GroupType& group_of(const Spot::Step& step) {
    const auto* kinds = kinds_of(*step.row);
    return kinds ? *kinds->types[step.kind] : *step.row->member.group;
}

bool leads_on(const Row& row) { return row.member.group || kinds_of(row); }

// Where a step leads from the struct `owner`.
Reached step_down(const Spot::Step& step, void* owner, bool fill) {
    const auto& member = step.row->member;
    void* here = member.of(owner);
    if (member.shape == FieldType::optional_group && !fill && !member.group->peek(here))
        return {nullptr, "nothing is stated under \"" + std::string(step.row->key) + "\""};
    if (member.group) return {member.group->open(here)};
    if (member.parts) {
        const auto at = find_part(*member.parts, here, step.id);
        if (!at)
            return {nullptr,
                    "there is no part \"" + step.id + "\" in " + std::string(step.row->key)};
        here = member.parts->part(here, *at);
    }
    const auto& kinds = *kinds_of(*step.row);
    if (kinds.index(here) != step.kind)
        return {nullptr, "a " + std::string(kinds.kinds[kinds.index(here)]) + " stands where a " +
                             std::string(kinds.kinds[step.kind]) + " was expected"};
    return {kinds.get(here)};
}

// One step further, if the next word names something that is there.
bool take_step(Spot& spot, const Row& row, void* owner, std::string_view& rest) {
    Spot::Step step{&row};
    void* here = row.member.of(owner);
    if (row.member.parts) {
        step.id = take_word(rest);
        const auto at = find_part(*row.member.parts, here, step.id);
        if (!at) return false;
        here = row.member.parts->part(here, *at);
    }
    if (const auto* kinds = kinds_of(row)) step.kind = kinds->index(here);
    spot.way.push_back(std::move(step));
    return true;
}

bool take_entry(Spot& spot, void* owner, std::string_view word) {
    if (spot.row->member.shape != FieldType::list) return false;
    std::size_t number = 0;
    const auto read = std::from_chars(word.data(), word.data() + word.size(), number);
    const auto& list = *static_cast<std::vector<double>*>(spot.row->member.of(owner));
    const bool whole = read.ec == std::errc() && read.ptr == word.data() + word.size();
    if (!whole || number < 1 || number > list.size() || word.front() == '0') return false;
    spot.entry = number - 1;
    return true;
}

// An empty optional group is looked into as if a default one were there.
void* inside(const Spot::Step& step, void* owner) {
    if (const auto reached = step_down(step, owner, false)) return reached.owner;
    return const_cast<void*>(group_of(step).fresh());
}

bool find(Spot& spot, void* owner, std::string_view rest) {
    const auto* group = &root_type();
    while (!rest.empty()) {
        const auto* row = find_row(*group, take_word(rest));
        if (!row) return false;
        if (!leads_on(*row)) {
            spot.row = row;
            return rest.empty() || take_entry(spot, owner, rest);
        }
        if (rest.empty() || !take_step(spot, *row, owner, rest)) return false;
        owner = inside(spot.way.back(), owner);
        group = &group_of(spot.way.back());
    }
    return false;
}

void take_range(Spot& spot) {
    if (!spot.is_number() && spot.row->member.shape != FieldType::list) return;
    const auto& unit = fields::unit_of(spot.row->measure);
    spot.low = fields::to_si(spot.row->range.low, unit);
    spot.high = fields::to_si(spot.row->range.high, unit);
}

// What a group that came to be on the way still lacks.
std::optional<std::string> lacking(const Spot::Step& step, void* owner) {
    if (step.row->member.shape != FieldType::optional_group) return std::nullopt;
    for (const auto& row : group_of(step).rows()) {
        if (row.need != fields::Need::required || row.member.shape != FieldType::number) continue;
        const double value = *static_cast<double*>(row.member.of(owner));
        if (!fields::range_complaint(value, row, {}).empty())
            return "\"" + std::string(row.key) + "\" of " + std::string(step.row->key) +
                   " has to be stated with it";
    }
    return std::nullopt;
}

}  // namespace

bool Spot::is_number() const noexcept {
    const auto shape = row->member.shape;
    return entry || shape == FieldType::number || shape == FieldType::optional_number;
}

bool Spot::may_be_empty() const noexcept { return row->member.shape == FieldType::optional_number; }

std::string_view Spot::part() const noexcept {
    return way.empty() ? std::string_view{} : std::string_view(way.front().id);
}

fields::Expected<Spot> find_spot(const vehicle::Vehicle& vehicle, std::string_view address) {
    Spot spot;
    spot.address = address;
    // Only looked at; the types underneath know no const.
    void* root = const_cast<vehicle::Vehicle*>(&vehicle);
    if (find(spot, root, address)) {
        take_range(spot);
        return spot;
    }
    auto near = fields::resolve(root_type(), &vehicle, address);
    return fields::Expected<Spot>::refused(near ? fields::in_quotes(address) + " cannot be reached"
                                                : std::move(near.violation));
}

Reached tractive_state(const Spot& spot, vehicle::Vehicle& vehicle, bool fill) {
    Reached here{&vehicle};
    for (const auto& step : spot.way) {
        here = step_down(step, here.owner, fill);
        if (!here) break;
    }
    return here;
}

double* number_in(const Spot& spot, void* owner) {
    void* member = spot.row->member.of(owner);
    if (spot.entry) {
        auto& list = *static_cast<std::vector<double>*>(member);
        return *spot.entry < list.size() ? &list[*spot.entry] : nullptr;
    }
    if (!spot.may_be_empty()) return static_cast<double*>(member);
    auto& held = *static_cast<std::optional<double>*>(member);
    return held ? &*held : nullptr;
}

std::optional<std::string> broken_rule(const Spot& spot, vehicle::Vehicle& vehicle) {
    Reached here{&vehicle};
    for (const auto& step : spot.way) {
        here = step_down(step, here.owner, false);
        if (!here) return std::nullopt;
        if (auto missing = lacking(step, here.owner)) return missing;
        if (auto broken = group_of(step).check(here.owner)) return std::move(broken->sentence);
    }
    return std::nullopt;
}

}  // namespace windwall::scenario
