#include "windwall/scenario/read_outings.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/fields/nearest.hpp"
#include "windwall/fields/physics_of.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/scenario/invalid_addresses.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>

namespace windwall::scenario {
namespace {

using fields::Cursor;
using vehicle::Leg;
using vehicle::Outing;

std::string id_violation(const fields::Ids& ids, const Menu& menu,
                         const std::vector<Outing>& before, std::string_view word) {
    if (std::ranges::find(menu, word, &Upgrade::id) != menu.end())
        return fields::in_quotes(word) + " is the id of an upgrade";
    if (std::ranges::find(before, word, &Outing::id) != before.end())
        return fields::in_quotes(word) + " is the id of another outing";
    return ids.violation(word);
}

// Whether a key that nobody knows was meant for this one.
bool is_meant(const Cursor& object, std::string_view key) {
    return std::ranges::any_of(object.keys(), [&](std::string_view typed) {
        return fields::nearest(typed, std::vector{key}) == key;
    });
}

std::vector<Leg> read_legs(const Cursor& list) {
    std::vector<Leg> legs;
    if (!fields::is_list_of("legs", Outing::most_legs, list)) return legs;
    if (list.size() == 0) list.complain("at least one leg is needed");
    for (std::size_t at = 0; at < list.size(); ++at)
        fields::read_tagged(fields::tagged_type<Leg>, &legs.emplace_back(), list.entry(at));
    return legs;
}

void read_body(const Cursor& object, Outing& into) {
    fields::read(fields::group_type<Outing>, &into, object, {"id", "legs"});
    if (!object.has("legs")) {
        if (!is_meant(object, "legs"))
            object.complain_about_key("legs", "is missing; it is the list of what is driven");
        return;
    }
    const auto legs = object["legs"];
    const auto before = legs.findings().problems.size();
    into.legs = read_legs(legs);
    if (legs.findings().problems.size() != before) return;
    for (const auto& [leg, sentence] : into.misplaced_legs())
        legs.entry(leg)["kind"].complain(sentence);
}

// A driveline that could not be read has no gears to count.
void look_for_launch_gear(const Cursor& object, const Outing& read,
                          const vehicle::Vehicle& vehicle) {
    const std::size_t there = driveline::gears(vehicle.driveline);
    const auto& problems = object.findings().problems;
    if (!read.launch_gear || *read.launch_gear <= static_cast<double>(there)) return;
    if (InvalidAddresses(problems).touches("driveline")) return;
    const std::string asked = std::to_string(static_cast<int>(*read.launch_gear));
    object["launch_gear"].complain(
        there == 1
            ? asked + " is no gear of this vehicle, which has a single one"
            : asked + " is outside 1 to " + std::to_string(there) + ", the gears of this vehicle");
}

fields::Json physics_of_leg(const Leg& leg, const fields::Provenance& notes,
                            const std::string& address) {
    const auto& type = fields::tagged_type<Leg>;
    auto physics =
        fields::physics_of(*type.types[type.index(&leg)], type.get(&leg), notes, address);
    physics["kind"] = leg.kind();
    return physics;
}

}  // namespace

std::vector<Outing> read_outings(const Cursor& list, const Menu& menu,
                                 const vehicle::Vehicle& vehicle) {
    std::vector<Outing> read;
    if (!fields::is_list_of("outings", most_outings, list)) return read;
    for (std::size_t at = 0; at < list.size(); ++at) {
        const auto entry = list.entry(at);
        Outing outing;
        if (!entry.is_object()) {
            entry.complain("an outing is expected here, an object; found " + entry.is_what());
            continue;
        }
        const auto id = fields::read_id(entry, "outing", [&](std::string_view word) {
            return id_violation(entry.findings().ids, menu, read, word);
        });
        outing.id = id.value_or("");
        const Cursor body = id ? entry.known_as(*id) : entry;
        read_body(body, outing);
        look_for_launch_gear(body, outing, vehicle);
        read.push_back(std::move(outing));
    }
    return read;
}

fields::Json physics_of(const std::vector<Outing>& outings, const fields::Provenance& notes) {
    auto list = fields::Json::array();
    for (const auto& outing : outings) {
        const std::string address = "outings/" + outing.id;
        auto physics = fields::physics_of(fields::group_type<Outing>, &outing, notes, address);
        auto legs = fields::Json::array();
        for (const auto& leg : outing.legs)
            legs.push_back(
                physics_of_leg(leg, notes, address + "/legs/" + std::to_string(legs.size() + 1)));
        physics["legs"] = std::move(legs);
        list.push_back(std::move(physics));
    }
    return list;
}

}  // namespace windwall::scenario
