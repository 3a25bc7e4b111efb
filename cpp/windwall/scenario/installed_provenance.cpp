#include "windwall/scenario/installed_provenance.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/scenario/complete.hpp"

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
    Fitting(const Scenario& scenario, UpgradeSet set, const Choices& chosen)
        : scenario_(scenario),
          from_(scenario.notes),
          notes_(scenario.notes),
          parts_(scenario.vehicle),
          next_choice_(chosen) {
        Faults faults;
        rearrange(parts_, scenario.menu, set, faults);
    }

    // Takes over what is noted at the address of an action.
    void carry(const std::string& from, const Action& action) {
        std::visit(Overloaded{
                       [&](const Replace& replace) { move(from, address_of(replace)); },
                       [&](const Remove& remove) {
                           for (const auto list : {"charge_path/", "driveline/"})
                               notes_.erase(list + remove.id);
                       },
                       [&](const Insert& insert) { move(from + "/part", address_of(insert)); },
                       [&](const Set& set) {
                           move(from, set.path.text());
                           if (std::holds_alternative<std::monostate>(set.value))
                               notes_.erase(set.path.text());
                       },
                       [&](const Choose& choose) {
                           move(from + "/" + std::to_string(next_choice_() + 1),
                                choose.path.text());
                       },
                       [&](const Scale& scale) { this->scale(from, scale); },
                       [&](const Add& add) { this->add(from, add); },
                   },
                   action.what);
    }

    Provenance take() { return std::move(notes_); }

private:
    // Where a part stands once it is installed.
    static std::string address_of(const auto& action) {
        return fields::joined(list_key(action.part), action.id);
    }

    // Relative sigmas add in quadrature.
    void scale(const std::string& from, const Scale& action) {
        auto note = stated(action.path);
        const double own = note.sigma.value_or(0) * action.factor;
        const double brought = note.value * sigma_at(from);
        note.value *= action.factor;
        restate(action.path, std::move(note), std::hypot(own, brought));
    }

    // Sigmas add in quadrature.
    void add(const std::string& from, const Add& action) {
        auto note = stated(action.path);
        const double own = note.sigma.value_or(0);
        note.value += action.amount;
        restate(action.path, std::move(note), std::hypot(own, sigma_at(from)));
    }

    void move(const std::string& from, const std::string& to) {
        notes_.erase(to);
        for (const auto& [address, note] : from_)
            if (fields::is_within(address, from))
                notes_.set(to + address.substr(from.size()), note);
    }

    double sigma_at(const std::string& address) const {
        const auto* note = from_.find(address);
        return note ? note->sigma.value_or(0) : 0;
    }

    // The note of a number, made up from its row where nobody stated it.
    Note stated(const FieldPath& path) const {
        if (const auto* note = notes_.find(path.text())) return *note;
        const auto value = value_at(path, parts_);
        Note note;
        note.value = std::get<double>(value);
        note.unit = &fields::unit_of(path.row().measure);
        note.sigma = sigma_of(scenario_, path.text(), path.row());
        return note;
    }

    void restate(const FieldPath& path, Note note, double sigma) {
        note.sigma.reset();
        if (sigma > 0) note.sigma = sigma;
        note.bare = note.unit->text.empty() && !note.sigma;
        note.text = text_of(note);
        notes_.set(path.text(), std::move(note));
    }

    const Scenario& scenario_;
    const Provenance& from_;
    Provenance notes_;
    vehicle::Vehicle parts_;  // as they stand, before any value changes
    NextChoice next_choice_;
};

}  // namespace

fields::Provenance installed_provenance(const Scenario& scenario, UpgradeSet set,
                                        const Choices& chosen) {
    Fitting fitting(scenario, set, chosen);
    each_action(scenario.menu, set, [&](std::size_t at, std::size_t number) {
        const auto& upgrade = scenario.menu[at];
        const auto& action = upgrade.actions[number];
        fitting.carry("upgrades/" + upgrade.id + "/" + action.address(), action);
    });
    return fitting.take();
}

}  // namespace windwall::scenario
