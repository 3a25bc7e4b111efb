#pragma once
#include "windwall/fields/document.hpp"
#include "windwall/scenario/value.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// What an upgrade does, worked out once when its file is read, so that a set of upgrades is
/// applied without looking at a text again.
namespace windwall::scenario {

inline constexpr std::size_t most_upgrades = 64;

/// A set of upgrades: bit i is upgrade i of the menu.
using UpgradeSet = std::uint64_t;

constexpr UpgradeSet only(std::size_t upgrade) { return UpgradeSet{1} << upgrade; }
constexpr bool holds(UpgradeSet set, std::size_t upgrade) { return (set >> upgrade & 1) != 0; }

/// The verbs, in the order in which they are carried out.
enum class Verb { replace, remove, insert, set, choose, scale, add };

std::string_view name(Verb verb);

/// A part of the charge path or of the driveline; its kind says which.
using Part = std::variant<charge::Part, driveline::Part>;

struct Replace {
    std::string id;
    Part part;
};

struct Remove {
    std::string id;
    std::size_t entry{};  // in the file
};

struct Insert {
    std::string id;
    Part part;
    std::vector<std::string> anchors;  // the first that is there counts
    bool after{};                      // behind it, or before it
    std::size_t entry{};               // in the file
};

struct Set {
    FieldPath path;
    Value value;
};

struct Choose {
    FieldPath path;
    std::vector<Value> values;
};

struct Scale {
    FieldPath path;
    fields::Range range;  // that the number is kept in, SI
    double factor{};
};

struct Add {
    FieldPath path;
    fields::Range range;
    double amount{};  // SI, a difference
};

/// What an upgrade is called and what it takes.
struct Terms {
    static constexpr std::string_view description = "What an upgrade is called and what it takes.";
    std::string title;
    std::optional<double> cost;   // in the currency of the file
    std::optional<double> hours;  // h

    static std::span<const fields::Row> rows();
};

struct Upgrade {
    std::string id;
    Terms terms;
    std::vector<std::string> required_ids;  // as stated
    std::vector<std::string> excluded_ids;
    UpgradeSet required{};  // closed: what the required ones require is in it
    UpgradeSet excluded{};  // symmetric, however stated

    std::vector<Replace> replaces;
    std::vector<Remove> removes;
    std::vector<Insert> inserts;
    std::vector<Set> sets;
    std::vector<Choose> choices;
    std::vector<Scale> scales;
    std::vector<Add> adds;

    std::shared_ptr<const fields::Json> source;  // as typed, to be saved
};

using Menu = std::vector<Upgrade>;

/// The list of a vehicle in which parts of this kind stand.
vehicle::ChargePath& list_of(vehicle::Vehicle& vehicle, const charge::Part&);
vehicle::Driveline& list_of(vehicle::Vehicle& vehicle, const driveline::Part&);

/// The key of that list.
std::string_view list_key(const Part& part);

}  // namespace windwall::scenario
