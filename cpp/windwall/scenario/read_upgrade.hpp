#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/invalid_addresses.hpp"
#include "windwall/scenario/upgrade.hpp"

#include <string>
#include <vector>

namespace windwall::scenario {

/// Reads everything of an upgrade that does not depend on the vehicle: id, terms, who it goes
/// with, and the parts it brings and takes. Returns where it stands, addressed by its id, or by its
/// number where the id cannot serve.
fields::Cursor read_upgrade(const fields::Cursor& object, Upgrade& into,
                            std::vector<std::string>& taken_ids);

/// What addresses are looked up in.
struct Surroundings {
    const vehicle::Vehicle& layout;  // with the upgrade's own parts and those it requires
    const Menu& menu;
    const InvalidAddresses& invalid;
    bool quiet{};  // parts are amiss, so an address that leads nowhere says nothing new
};

/// Reads what an upgrade changes, by address.
void read_changes(const fields::Cursor& object, Upgrade& into, const Surroundings& surroundings);

/// Where in the file an action of an upgrade stands.
fields::Cursor cursor_of(const fields::Cursor& object, const Action& action);

}  // namespace windwall::scenario
