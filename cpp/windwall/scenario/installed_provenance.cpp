#include "windwall/scenario/installed_provenance.hpp"

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
        move(of(upgrade, Verb::set) + action.path.text(), action.path.text());
        if (std::holds_alternative<std::monostate>(action.value)) notes_.erase(action.path.text());
    }

    void choose(const Upgrade& upgrade, const Choose& action, std::size_t pick) {
        move(of(upgrade, Verb::choose) + action.path.text() + "/" + std::to_string(pick + 1),
             action.path.text());
    }

    // Relative sigmas add in quadrature.
    void scale(const Upgrade& upgrade, const Scale& action) {
        auto note = stated(action.path);
        const double own = note.sigma.value_or(0) * action.factor;
        const double brought = note.value * sigma_of(upgrade, Verb::scale, action.path);
        note.value *= action.factor;
        restate(action.path, std::move(note), std::hypot(own, brought));
    }

    // Sigmas add in quadrature.
    void add(const Upgrade& upgrade, const Add& action) {
        auto note = stated(action.path);
        const double own = note.sigma.value_or(0);
        note.value += action.amount;
        restate(action.path, std::move(note),
                std::hypot(own, sigma_of(upgrade, Verb::add, action.path)));
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

    double sigma_of(const Upgrade& upgrade, Verb verb, const FieldPath& path) const {
        const auto* note = from_.find(of(upgrade, verb) + path.text());
        return note ? note->sigma.value_or(0) : 0;
    }

    // The note of a number, made up from its row where nobody stated it.
    Note stated(const FieldPath& path) const {
        if (const auto* note = notes_.find(path.text())) return *note;
        const auto value = value_at(path, parts_);
        Note note;
        note.value = std::get<double>(value);
        note.unit = &fields::unit_of(path.row().measure);
        note.sigma = fields::sigma_of(path.row(), nullptr);
        return note;
    }

    void restate(const FieldPath& path, Note note, double sigma) {
        note.sigma.reset();
        if (sigma > 0) note.sigma = sigma;
        note.bare = note.unit->text.empty() && !note.sigma;
        note.text = text_of(note);
        notes_.set(path.text(), std::move(note));
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

fields::Provenance installed_provenance(const Scenario& scenario, UpgradeSet set,
                                        const Choices& chosen) {
    Fitting fitting(scenario, set);
    std::size_t choice = 0;
    each(scenario.menu, set, [&](const Upgrade& upgrade) { fitting.parts(upgrade); });
    each(scenario.menu, set, [&](const Upgrade& upgrade) {
        for (const auto& action : upgrade.sets)
            fitting.set(upgrade, action);
    });
    each(scenario.menu, set, [&](const Upgrade& upgrade) {
        for (const auto& action : upgrade.choices) {
            fitting.choose(upgrade, action, choice < chosen.size() ? chosen[choice] : 0);
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
