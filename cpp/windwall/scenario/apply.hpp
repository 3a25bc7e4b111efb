#pragma once
#include "windwall/scenario/upgrade.hpp"

#include <span>
#include <string>
#include <vector>

/// Carrying out the verbs of a set of upgrades: verb by verb, and within a verb in the order of the
/// menu. What comes out does not depend on the order in which the upgrades were named.
namespace windwall::scenario {

/// Which value each open choice of a set takes, counted from 0, in the order of the menu. Choices
/// beyond the end take their first value.
using Choices = std::vector<std::size_t>;

/// Hands out what was chosen, one open choice after the other; the first value where nothing was.
class NextChoice {
public:
    explicit NextChoice(const Choices& chosen) : chosen_(&chosen) {}
    std::size_t operator()() noexcept {
        const std::size_t choice = choice_++;
        return choice < chosen_->size() ? (*chosen_)[choice] : 0;
    }

private:
    const Choices* chosen_;
    std::size_t choice_ = 0;
};

/// Something that cannot be done in this vehicle, and by what.
struct Fault {
    std::size_t upgrade{};
    std::size_t action{};
    std::string sentence;
};

using Faults = std::vector<Fault>;

/// Replaces, removes and inserts parts.
void rearrange(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set, Faults& faults);

/// Sets, chooses, scales and adds, and checks everything that was touched.
void change_values(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                   const Choices& chosen, Faults& faults);

}  // namespace windwall::scenario
