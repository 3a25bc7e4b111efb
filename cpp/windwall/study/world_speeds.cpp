#include "windwall/scenario/numbers.hpp"
#include "windwall/solve/answer/binding.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/study/engine_group.hpp"
#include "windwall/study/solve_sets.hpp"
#include "windwall/study/worlds.hpp"

#include <limits>
#include <memory>
#include <optional>

namespace windwall::study {
namespace {

using scenario::Scenario;
using scenario::UpgradeSet;

constexpr double no_speed = std::numeric_limits<double>::quiet_NaN();

struct Told {
    double speed = no_speed;
    WorldEnd end = WorldEnd::no_answer;
};

Told told(const std::optional<solve::TopSpeed>& found) {
    if (!found) return {no_speed, WorldEnd::not_installable};
    if (!found->outcome.answered()) return {};
    const bool ends_early = solve::binding(found->equilibrium) == solve::Binding::no_answer;
    return {found->speed(), ends_early ? WorldEnd::ends_without_answer : WorldEnd::answered};
}

/// Sets of one engine in one world after the other.
class SetsInWorlds {
public:
    SetsInWorlds(const Scenario& scenario, const Worlds& worlds,
                 const std::vector<UpgradeSet>& sets, WorldSpeeds& speeds)
        : drawn_(scenario), worlds_(worlds), sets_(sets), speeds_(speeds) {}

    void solve(std::size_t world, const std::vector<std::size_t>& members) {
        const Scenario& there = drawn_.at(worlds_.at(world));
        const bool sound = !drawn_.broken_rule();
        EngineGroup group(there, 0);
        for (const std::size_t i : members) {
            const Told one =
                sound ? speed_of(group, sets_[i]) : Told{no_speed, WorldEnd::broken_rule};
            speeds_.speed[world * sets_.size() + i] = one.speed;
            speeds_.end[world * sets_.size() + i] = one.end;
        }
    }

private:
    static Told speed_of(EngineGroup& group, UpgradeSet set) {
        return solve::guarded([&] { return told(group.brief_top_speed(set)); },
                              [] { return Told{}; });
    }

    scenario::Drawn drawn_;
    Worlds worlds_;
    const std::vector<UpgradeSet>& sets_;
    WorldSpeeds& speeds_;
};

}  // namespace

WorldSpeeds world_speeds(const Scenario& scenario, const Worlds& worlds,
                         const std::vector<UpgradeSet>& sets, const BatchOptions& options) {
    const auto groups = by_engine(scenario, sets);
    WorldSpeeds speeds{std::vector<double>(worlds.size() * sets.size(), no_speed),
                       std::vector<WorldEnd>(worlds.size() * sets.size(), WorldEnd::not_reached)};
    run_batch(
        worlds.size() * groups.size(),
        [&] {
            auto worker = std::make_shared<SetsInWorlds>(scenario, worlds, sets, speeds);
            return [&, worker](std::size_t item) {
                worker->solve(item / groups.size(), groups[item % groups.size()]);
            };
        },
        options);
    return speeds;
}

}  // namespace windwall::study
