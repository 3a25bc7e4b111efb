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

/// A part of the charge path or of the driveline; its kind says which.
using Part = std::variant<charge::Part, driveline::Part>;

/// Whether the engine's full throttle, or what is rated, hangs on an input: not so on those of the
/// body and the gearing.
bool is_of_engine(const FieldPath& path) noexcept;

struct Replace {
    std::string id;
    Part part;
};

struct Remove {
    std::string id;
};

struct Insert {
    std::string id;
    Part part;
    std::vector<std::string> anchors;  // the first that is there counts
    bool after{};                      // behind it, or before it
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

/// One thing that an upgrade does. The alternatives stand in the order in which they are carried
/// out.
struct Action {
    std::variant<Replace, Remove, Insert, Set, Choose, Scale, Add> what;
    std::string key;  // under its verb in the file: an id, an address, or a number from 1

    std::size_t verb() const noexcept { return what.index(); }
    template <class T>
    const T* as() const noexcept {
        return std::get_if<T>(&what);
    }
    /// The input that is set, chosen, scaled or added to; null for what moves parts.
    const FieldPath* path() const noexcept;
    /// Whether full throttle of the engine, or what is rated, is another after it.
    bool changes_engine() const noexcept;
    /// Its address below its upgrade: "set/body/mass".
    std::string address() const;
};

/// The word of a verb in files.
std::string_view verb_name(std::size_t verb);

/// Helpers for std::visit over what an action does.
template <class... Cases>
struct Overloaded : Cases... {
    using Cases::operator()...;
};
template <class... Cases>
Overloaded(Cases...) -> Overloaded<Cases...>;  // clang 14 does not deduce it of an aggregate

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

    std::vector<Action> actions;

    /// The values that each choice it leaves open has.
    std::vector<const Choose*> choices() const;

    std::shared_ptr<const fields::Json> source;  // as typed, to be saved
};

using Menu = std::vector<Upgrade>;

/// Calls `visit(upgrade, action)`, both by number, with all that a set of upgrades does, in the
/// order in which it is carried out: verb by verb, and within a verb in the order of the menu.
template <class Visit>
void each_action(const Menu& menu, UpgradeSet set, Visit&& visit) {
    for (std::size_t verb = 0; verb < std::variant_size_v<decltype(Action::what)>; ++verb)
        for (std::size_t at = 0; at < menu.size(); ++at) {
            if (!holds(set, at)) continue;
            for (std::size_t action = 0; action < menu[at].actions.size(); ++action)
                if (menu[at].actions[action].verb() == verb) visit(at, action);
        }
}

/// Whether a set of upgrades puts a value to an input, or moves it.
bool changes_value(const Menu& menu, UpgradeSet set, std::string_view address);

/// The list of a vehicle in which parts of this kind stand.
vehicle::ChargePath& list_of(vehicle::Vehicle& vehicle, const charge::Part&);
vehicle::Driveline& list_of(vehicle::Vehicle& vehicle, const driveline::Part&);

/// The key of that list.
std::string_view list_key(const Part& part);

}  // namespace windwall::scenario
