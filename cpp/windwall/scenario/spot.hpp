#pragma once
#include "windwall/fields/expected.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::scenario {

/// One value of a vehicle, found by keys and by the ids of parts, so that the same spot serves
/// every layout in which the part stands. Words, texts, lists and tables have spots like numbers.
struct Spot {
    struct Step {
        const fields::Row* row{};
        std::string id{};      // of a part
        std::size_t kind = 0;  // of a part, or of a member with kinds
    };
    std::string address;
    std::vector<Step> way;               // from the vehicle to the struct that owns the value
    const fields::Row* row{};            // of the value
    std::optional<std::size_t> entry{};  // of a list of numbers
    double low{};                        // of the range, SI
    double high{};

    bool is_number() const noexcept;
    bool may_be_empty() const noexcept;
    /// The id of the part it lies in; empty outside of parts.
    std::string_view part() const noexcept;
};

/// Finds the spot of an address over the parts that this vehicle has, or says what is wrong with
/// the address and which one is near. Optional groups are looked into whether filled or not.
fields::Expected<Spot> find_spot(const vehicle::Vehicle& vehicle, std::string_view address);

/// The struct that owns the value, or why this vehicle has none.
struct Reached {
    void* owner{};
    std::string why{};
    explicit operator bool() const noexcept { return owner != nullptr; }
};

/// Goes to the struct that owns the value; with `fill`, optional groups on the way come to be.
Reached tractive_state(const Spot& spot, vehicle::Vehicle& vehicle, bool fill);

/// The number itself; null where the optional that holds it is empty.
double* number_in(const Spot& spot, void* owner);

/// A rule across fields that one of the structs on the way to the spot breaks.
std::optional<std::string> broken_rule(const Spot& spot, vehicle::Vehicle& vehicle);

}  // namespace windwall::scenario
