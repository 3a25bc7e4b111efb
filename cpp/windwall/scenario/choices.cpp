#include "windwall/scenario/choices.hpp"

#include "windwall/fields/cursor.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/install.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace windwall::scenario {
namespace {

using Found = fields::Expected<std::size_t>;

constexpr double alike = 1e-9;  // of a number that has been through another unit

bool same_number(double one, double other) {
    return std::abs(one - other) <= alike * std::max(std::abs(one), std::abs(other));
}

bool same(const Value& one, const Value& other) {
    if (one.index() != other.index()) return false;
    const Overloaded compare{
        [&](double number) { return same_number(number, std::get<double>(other)); },
        [&](const Word& word) { return word.number == std::get<Word>(other).number; },
        [&](const std::vector<double>& list) {
            return std::ranges::equal(list, std::get<std::vector<double>>(other), same_number);
        },
        [&]<class T>(const T& held) { return held == std::get<T>(other); },
    };
    return std::visit(compare, one);
}

std::string listed(const std::vector<std::string>& words) {
    std::string text = words.front();
    for (std::size_t at = 1; at < words.size(); ++at)
        text += (at + 1 == words.size() ? " and " : ", ") + words[at];
    return text;
}

std::string on_offer(const Choose& choice) {
    std::vector<std::string> values;
    for (const Value& value : choice.values)
        values.push_back(file_text(choice.path, value));
    return listed(values);
}

// Which of the open choices a statement means.
Found meant(const Menu& menu, const std::vector<OpenChoice>& open, const StatedChoice& stated) {
    std::vector<std::size_t> own;
    std::vector<std::string> addresses;
    for (std::size_t at = 0; at < open.size(); ++at) {
        if (menu[open[at].upgrade].id != stated.upgrade) continue;
        addresses.push_back(open[at].choice->path.text());
        if (stated.address.empty() || stated.address == addresses.back()) own.push_back(at);
    }
    const std::string name = fields::in_quotes(stated.upgrade);
    if (addresses.empty()) return Found::refused(name + " leaves nothing to choose");
    if (own.empty())
        return Found::refused(name + " leaves " + listed(addresses) + " to choose, not " +
                              fields::in_quotes(stated.address));
    if (own.size() > 1)
        return Found::refused(name +
                              " leaves several values to choose: name each by its address, " +
                              listed(addresses));
    return own.front();
}

// Which of its values a choice is to take.
Found chosen_value(const Choose& choice, const StatedChoice& stated) {
    const std::string name = fields::in_quotes(stated.upgrade) + " offers " + on_offer(choice) +
                             " for " + choice.path.text();
    if (const auto* place = std::get_if<Place>(&stated.value)) {
        if (place->from_0 < choice.values.size()) return place->from_0;
        return Found::refused(name + ", and no value number " + std::to_string(place->from_0 + 1));
    }
    fields::ReadContext findings(fields::group_type<vehicle::Vehicle>);
    const auto value = read_given(choice.path, std::get<Given>(stated.value), findings);
    if (!value) return Found::refused(name + "; " + findings.problems.sorted().front().message);
    const auto found = std::ranges::find_if(
        choice.values, [&](const Value& offered) { return same(offered, *value); });
    if (found == choice.values.end())
        return Found::refused(name + ", not " + file_text(choice.path, *value));
    return static_cast<std::size_t>(found - choice.values.begin());
}

// The next combination, as an odometer counts; false after the last.
bool advance(Choices& chosen, const std::vector<OpenChoice>& open) {
    for (std::size_t at = chosen.size(); at-- > 0;) {
        if (++chosen[at] < open[at].choice->values.size()) return true;
        chosen[at] = 0;
    }
    return false;
}

bool meets(const Choices& chosen, const Wanted& wanted) {
    for (std::size_t at = 0; at < wanted.size(); ++at)
        if (wanted[at] && *wanted[at] != chosen[at]) return false;
    return true;
}

}  // namespace

std::vector<OpenChoice> open_choices(const Menu& menu, UpgradeSet set) {
    std::vector<OpenChoice> open;
    for (std::size_t at = 0; at < menu.size(); ++at)
        if (holds(set, at))
            for (const auto* choice : menu[at].choices())
                open.push_back({at, choice});
    return open;
}

fields::Expected<Wanted> wanted_choices(const Scenario& scenario, UpgradeSet set,
                                        std::span<const StatedChoice> stated) {
    const auto open = open_choices(scenario.menu, set);
    Wanted wanted(open.size());
    for (const StatedChoice& one : stated) {
        const auto place = meant(scenario.menu, open, one);
        if (!place) return fields::Expected<Wanted>::refused(place.violation);
        const auto value = chosen_value(*open[*place].choice, one);
        if (!value) return fields::Expected<Wanted>::refused(value.violation);
        if (wanted[*place].value_or(*value) != *value)
            return fields::Expected<Wanted>::refused(fields::in_quotes(one.upgrade) +
                                                     " is told to take two values");
        wanted[*place] = *value;
    }
    return wanted;
}

void each_choice(const Scenario& scenario, UpgradeSet set, const ChoiceUse& use,
                 const Wanted& wanted) {
    const auto open = open_choices(scenario.menu, set);
    Choices chosen(open.size(), 0);
    do {
        if (!meets(chosen, wanted)) continue;
        auto made = install(scenario, set, chosen);
        if (auto* vehicle = std::get_if<vehicle::Vehicle>(&made)) use(std::move(*vehicle), chosen);
    } while (advance(chosen, open));
}

Choices resolve_choice(const Scenario& scenario, UpgradeSet set, const ChoiceSpeed& speed,
                       const Wanted& wanted) {
    Choices best(open_choices(scenario.menu, set).size(), 0);
    for (std::size_t at = 0; at < wanted.size(); ++at)
        best[at] = wanted[at].value_or(0);
    double fastest = -std::numeric_limits<double>::infinity();
    const auto keep_faster = [&](const vehicle::Vehicle& vehicle, const Choices& chosen) {
        const double found = speed(vehicle, chosen);
        if (!(found > fastest)) return;
        fastest = found;
        best = chosen;
    };
    each_choice(scenario, set, keep_faster, wanted);
    return best;
}

std::string file_text(const FieldPath& path, const Value& value) {
    const Overloaded said{
        [](std::monostate) { return std::string("none"); },
        [](bool flag) { return std::string(flag ? "true" : "false"); },
        [&](double number) { return fields::format(number, path.row().measure); },
        [&](const Word& word) { return std::string(path.row().member.choice->names[word.number]); },
        [](const std::string& text) { return text; },
        [&](const std::vector<double>& list) {
            std::vector<std::string> texts{"none"};
            for (const double number : list)
                texts.push_back(fields::format(number, path.row().measure));
            if (texts.size() > 1) texts.erase(texts.begin());
            return listed(texts);
        },
        [](const fields::Columns&) { return std::string("a table"); },
    };
    return std::visit(said, value);
}

}  // namespace windwall::scenario
