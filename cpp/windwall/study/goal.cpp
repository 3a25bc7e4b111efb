#include "windwall/study/goal.hpp"

#include "windwall/fields/readable.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::study {
namespace {

using fields::readable;
using scenario::Scenario;

constexpr double most_power = 3;         // times what there is
constexpr double least_drag_area = 0.2;  // of what there is

std::string speed_text(double si, const Scenario& scenario) {
    return readable(si, fields::speed("km/h"), scenario.header.units, 4);
}

std::string octane_text(double octane) { return fields::readable_number(octane, 3); }

/// The upgrade that gains most alone at one anchor; nothing where none gains.
const UpgradeWorth* first_place(const Ranking& ranking, std::size_t anchor) {
    const UpgradeWorth* best = nullptr;
    for (const UpgradeWorth& worth : ranking.upgrades) {
        const double gain = worth.alone[anchor];
        if (gain > 0 && (best == nullptr || gain > best->alone[anchor])) best = &worth;
    }
    return best;
}

std::string place_text(const Scenario& scenario, const Ranking& ranking, std::size_t anchor) {
    const UpgradeWorth* first = first_place(ranking, anchor);
    if (first == nullptr) return "no upgrade gains anything";
    return scenario.menu[first->upgrade].id + " (+" +
           readable(first->alone[anchor], fields::speed("km/h"), scenario.header.units, 2) + ")";
}

std::string first_place_sentence(const Scenario& scenario, const Ranking& ranking) {
    const UpgradeWorth* first = first_place(ranking, middle);
    const bool steady = first_place(ranking, 0) == first && first_place(ranking, 2) == first;
    if (steady) {
        return "First place by gain alone is " + place_text(scenario, ranking, middle) +
               " and stays first at knock anchors from " + octane_text(ranking.octane.front()) +
               " to " + octane_text(ranking.octane.back()) + ".";
    }
    std::string text = "First place by gain alone changes with the knock anchor:";
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        text += (anchor == 0 ? " at " : "; at ") + octane_text(ranking.octane[anchor]) + " it is " +
                place_text(scenario, ranking, anchor);
    }
    return text + ". Measure where this engine knocks before spending money on either.";
}

std::string base_sentence(const Scenario& scenario, const SetResult& base) {
    if (!base.answered) return "As it stands the vehicle has no answer: " + base.reason;
    std::string text = "As it stands: " + speed_text(base.speed[middle], scenario);
    if (scenario.vehicle.goal.run_up) {
        text += " at the end of " + readable(*scenario.vehicle.goal.run_up, fields::length("m"),
                                             scenario.header.units, 4);
    }
    if (scenario.vehicle.goal.speed) {
        text += "; the goal is " + speed_text(*scenario.vehicle.goal.speed, scenario);
    }
    return text + ".";
}

std::string limits_sentence(const SetResult& base) {
    std::string text = "As it stands the vehicle already passes: ";
    for (std::size_t i = 0; i < base.passed.size(); ++i) {
        if (i > 0) text += ", ";
        text += base.passed[i].limit.address + " (" + base.passed[i].limit.why + ")";
    }
    return text + ". No set that still passes it is recommended.";
}

}  // namespace

Missing missing_to(const vehicle::Vehicle& vehicle, double speed) {
    const solve::TopSpeed now = solve::top_speed(vehicle);
    Missing missing;
    if (!now.outcome.answered()) return missing;
    const auto excess = [&](const vehicle::Vehicle& car, double factor) {
        const solve::TopSpeed found = solve::top_speed(car, {factor, 0});
        return (found.outcome.answered() ? found.speed() : 0) - speed;
    };
    const auto with_power = [&](double factor) { return excess(vehicle, factor); };
    const auto with_drag = [&](double factor) {
        vehicle::Vehicle slimmer = vehicle;
        slimmer.body.drag_area *= factor;
        return excess(slimmer, 1);
    };
    const numerics::RootOptions close{1e-6, 0, 40};
    const solve::Point& point = now.equilibrium.pull->point;
    const auto factor = numerics::find_root(with_power, 1, most_power, close);
    if (factor.converged) {
        missing.power = (factor.x - 1) * point.torque * point.condition.engine_speed;
    }
    const auto share = numerics::find_root(with_drag, least_drag_area, 1, close);
    if (share.converged) missing.drag_area = (1 - share.x) * vehicle.body.drag_area;
    return missing;
}

std::vector<std::string> rank_sentences(const Scenario& scenario, const Ranking& ranking) {
    std::vector<std::string> sentences;
    if (ranking.sets.empty() || ranking.sets.front().set != 0) return sentences;
    const SetResult& base = ranking.sets.front();
    sentences.push_back(base_sentence(scenario, base));
    if (!base.passed.empty()) sentences.push_back(limits_sentence(base));
    if (!ranking.upgrades.empty()) sentences.push_back(first_place_sentence(scenario, ranking));
    return sentences;
}

}  // namespace windwall::study
