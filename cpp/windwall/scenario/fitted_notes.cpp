#include "windwall/scenario/fitted_notes.hpp"

#include "windwall/fields/exact.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::scenario {
namespace {

using fields::Note;
using fields::Provenance;

std::string text_of(const Note& note) {
    auto text = fields::shortest(note.value, *note.unit);
    if (note.sigma)
        text += " ± " + fields::shortest(*note.sigma, *note.unit, fields::Counted::difference);
    if (!note.unit->text.empty()) text += " " + std::string(note.unit->text);
    return text;
}

class Fitting {
public:
    Fitting(const Scenario& scenario, UpgradeSet set)
        : from_(scenario.notes), notes_(scenario.notes), parts_(scenario.vehicle) {
        Faults faults;
        rearrange(parts_, scenario.menu, set, faults);
    }

    void parts(const Upgrade& upgrade) {
        for (const auto& action : upgrade.replaces)
            move(of(upgrade, Verb::replace) + action.id,
                 std::string(list_key(action.part)) + "/" + action.id);
        for (const auto& action : upgrade.removes)
            for (const auto list : {"charge_path/", "driveline/"})
                notes_.erase(list + action.id);
        for (const auto& action : upgrade.inserts)
            move(of(upgrade, Verb::insert) + std::to_string(action.entry + 1) + "/part",
                 std::string(list_key(action.part)) + "/" + action.id);
    }

    void set(const Upgrade& upgrade, const Set& action) {
        move(of(upgrade, Verb::set) + action.spot.address, action.spot.address);
        if (std::holds_alternative<std::monostate>(action.value)) notes_.erase(action.spot.address);
    }

    void choose(const Upgrade& upgrade, const Choose& action, std::size_t pick) {
        move(of(upgrade, Verb::choose) + action.spot.address + "/" + std::to_string(pick + 1),
             action.spot.address);
    }

    // Relative sigmas add in quadrature.
    void scale(const Upgrade& upgrade, const Scale& action) {
        auto note = stated(action.spot);
        const double own = note.sigma.value_or(0) * action.factor;
        const double brought = note.value * sigma_of(upgrade, Verb::scale, action.spot);
        note.value *= action.factor;
        restate(action.spot, std::move(note), std::hypot(own, brought));
    }

    // Sigmas add in quadrature.
    void add(const Upgrade& upgrade, const Add& action) {
        auto note = stated(action.spot);
        const double own = note.sigma.value_or(0);
        note.value += action.amount;
        restate(action.spot, std::move(note),
                std::hypot(own, sigma_of(upgrade, Verb::add, action.spot)));
    }

    Provenance take() { return std::move(notes_); }

private:
    static std::string of(const Upgrade& upgrade, Verb verb) {
        return "upgrades/" + upgrade.id + "/" + std::string(name(verb)) + "/";
    }

    void move(const std::string& from, const std::string& to) {
        notes_.erase(to);
        for (const auto& [address, note] : from_)
            if (address == from || address.starts_with(from + "/"))
                notes_.set(to + address.substr(from.size()), note);
    }

    double sigma_of(const Upgrade& upgrade, Verb verb, const Spot& spot) const {
        const auto* note = from_.find(of(upgrade, verb) + spot.address);
        return note ? note->sigma.value_or(0) : 0;
    }

    // The note of a number, made up from its row where nobody stated it.
    Note stated(const Spot& spot) const {
        if (const auto* note = notes_.find(spot.address)) return *note;
        const auto value = value_at(spot, parts_);
        Note note;
        note.value = std::get<double>(value);
        note.unit = &fields::unit_of(spot.row->measure);
        note.sigma = fields::sigma_of(*spot.row, nullptr);
        return note;
    }

    void restate(const Spot& spot, Note note, double sigma) {
        note.sigma.reset();
        if (sigma > 0) note.sigma = sigma;
        note.bare = note.unit->text.empty() && !note.sigma;
        note.text = text_of(note);
        notes_.set(spot.address, std::move(note));
    }

    const Provenance& from_;
    Provenance notes_;
    vehicle::Vehicle parts_;  // as they stand, before any value changes
};

template <class Visit>
void each(const Menu& menu, UpgradeSet set, Visit&& visit) {
    for (std::size_t at = 0; at < menu.size(); ++at)
        if (holds(set, at)) visit(menu[at]);
}

}  // namespace

fields::Provenance fitted_notes(const Scenario& scenario, UpgradeSet set, const Picks& picks) {
    Fitting fitting(scenario, set);
    std::size_t choice = 0;
    each(scenario.menu, set, [&](const Upgrade& upgrade) { fitting.parts(upgrade); });
    each(scenario.menu, set, [&](const Upgrade& upgrade) {
        for (const auto& action : upgrade.sets)
            fitting.set(upgrade, action);
    });
    each(scenario.menu, set, [&](const Upgrade& upgrade) {
        for (const auto& action : upgrade.choices) {
            fitting.choose(upgrade, action, choice < picks.size() ? picks[choice] : 0);
            ++choice;
        }
    });
    each(scenario.menu, set, [&](const Upgrade& upgrade) {
        for (const auto& action : upgrade.scales)
            fitting.scale(upgrade, action);
    });
    each(scenario.menu, set, [&](const Upgrade& upgrade) {
        for (const auto& action : upgrade.adds)
            fitting.add(upgrade, action);
    });
    return fitting.take();
}

}  // namespace windwall::scenario
