#include "windwall/scenario/numbers.hpp"

#include "windwall/fields/field_path.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/apply_anchor_sigma.hpp"
#include "windwall/scenario/complete.hpp"

#include <algorithm>
#include <limits>
#include <stdexcept>

namespace windwall::scenario {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// One number where it lives, and what is known of it.
struct Number {
    std::string address;
    const fields::Row* row{};  // null for a factor or an amount
    double* here{};
};

template <class Visit>
void each_of_struct(const fields::GroupType& type, void* made, const std::string& under,
                    Visit&& visit) {
    for (const auto& path : fields::all_numbers(type, made))
        if (path.get(made))
            visit(Number{fields::joined(under, path.text()), &path.row(), &path.at(made)});
}

template <class Visit>
void each_of_part(Part& part, const std::string& under, Visit&& visit) {
    std::visit(
        [&](auto& kinds) {
            std::visit([&]<class T>(
                           T& made) { each_of_struct(fields::group_type<T>, &made, under, visit); },
                       kinds.value);
        },
        part);
}

template <class Visit>
void each_of_value(const FieldPath& path, Value& value, const std::string& address, Visit&& visit) {
    if (auto* number = std::get_if<double>(&value)) visit(Number{address, &path.row(), number});
    if (auto* list = std::get_if<std::vector<double>>(&value))
        for (std::size_t at = 0; at < list->size(); ++at)
            visit(Number{address + "/" + std::to_string(at + 1), &path.row(), &(*list)[at]});
}

template <class Visit>
void each_of_upgrade(Upgrade& upgrade, Visit&& visit) {
    for (auto& action : upgrade.actions) {
        const auto at = "upgrades/" + upgrade.id + "/" + action.address();
        std::visit(Overloaded{
                       [&](Replace& replace) { each_of_part(replace.part, at, visit); },
                       [](Remove&) {},
                       [&](Insert& insert) { each_of_part(insert.part, at + "/part", visit); },
                       [&](Set& set) { each_of_value(set.path, set.value, at, visit); },
                       [&](Choose& choose) {
                           for (std::size_t i = 0; i < choose.values.size(); ++i)
                               each_of_value(choose.path, choose.values[i],
                                             at + "/" + std::to_string(i + 1), visit);
                       },
                       [&](Scale& scale) {
                           visit(Number{at, nullptr, &scale.factor});
                       },
                       [&](Add& add) {
                           visit(Number{at, nullptr, &add.amount});
                       },
                   },
                   action.what);
    }
}

double sigma_of(const Number& number, const Scenario& from) {
    const auto* note = from.notes.find(number.address);
    if (!number.row) return note ? note->sigma.value_or(0) : 0;
    const double sigma = scenario::sigma_of(from, number.address, *number.row);
    // Nobody knows exactly where an engine knocks, whatever is stated.
    return sigma > 0 || number.address != knock_anchor ? sigma : anchor_spread(from.vehicle);
}

// Every number of a scenario that has a sigma, in one order for all who ask.
template <class Visit>
void each_uncertain(Scenario& scenario, Visit&& visit) {
    const auto if_uncertain = [&](const Number& number) {
        const double sigma = sigma_of(number, scenario);
        if (sigma > 0) visit(number, sigma);
    };
    each_of_struct(fields::group_type<vehicle::Vehicle>, &scenario.vehicle, "", if_uncertain);
    for (auto& upgrade : scenario.menu)
        each_of_upgrade(upgrade, if_uncertain);
}

}  // namespace

std::vector<Uncertain> uncertain_numbers(const Scenario& scenario) {
    std::vector<Uncertain> all;
    auto copy = scenario;
    each_uncertain(copy, [&](const Number& number, double sigma) {
        Uncertain made{number.address, *number.here, sigma, -infinity, infinity};
        if (number.row) {
            const auto range = fields::range_in_si(*number.row);
            made.low = range.low;
            made.high = range.high;
        }
        all.push_back(std::move(made));
    });
    return all;
}

Drawn::Drawn(const Scenario& scenario) : scenario_(std::make_unique<Scenario>(scenario)) {
    each_uncertain(*scenario_,
                   [&](const Number& number, double) { numbers_.push_back(number.here); });
    for (auto& path :
         fields::all_numbers(fields::group_type<vehicle::Vehicle>, &scenario_->vehicle)) {
        const auto* here = path.find(&scenario_->vehicle);
        if (std::ranges::find(numbers_, here) != numbers_.end()) paths_.push_back(std::move(path));
    }
}

const Scenario& Drawn::at(std::span<const double> values) {
    if (values.size() != numbers_.size())
        throw std::logic_error("a value for each uncertain number is needed");
    for (std::size_t i = 0; i < values.size(); ++i)
        *numbers_[i] = values[i];
    return *scenario_;
}

std::optional<std::string> Drawn::broken_rule() const {
    for (const auto& path : paths_)
        if (auto broken = path.broken_rule(&scenario_->vehicle)) return broken;
    return std::nullopt;
}

Scenario with_numbers(const Scenario& scenario, std::span<const double> values) {
    return Drawn(scenario).at(values);
}

}  // namespace windwall::scenario
