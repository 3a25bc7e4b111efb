#pragma once
#include "windwall/scenario/install.hpp"
#include "windwall/study/fitted_engine.hpp"

#include <map>
#include <memory>
#include <optional>

namespace windwall::study {

/// Solves sets that hold the same upgrades of the engine, so that they differ in body and gearing
/// alone. The workspace of one thread.
class EngineGroup {
public:
    EngineGroup(const scenario::Scenario& scenario, double anchor_spread)
        : scenario_(scenario), anchor_spread_(anchor_spread) {}

    /// Fills in what solving tells of a set of the scenario's menu.
    SetResult solve(scenario::UpgradeSet chosen, SetResult result);
    /// Its speed at the lower anchor and no more; nothing where it cannot be installed.
    std::optional<solve::TopSpeed> brief_top_speed(scenario::UpgradeSet chosen);

private:
    /// A vehicle with the set in it and one value for each open choice.
    struct Fitted {
        scenario::Choices choices;
        vehicle::Vehicle vehicle;
        FittedEngine* engine;
    };
    struct Fastest {
        const Fitted* fitted;
        solve::TopSpeed found;
    };
    std::vector<Fitted> fit_each(scenario::UpgradeSet chosen);
    Fastest fastest(const std::vector<Fitted>& fitted, std::size_t anchor);
    std::vector<double> rough_speeds(const std::vector<Fitted>& fitted, std::size_t anchor);
    solve::TopSpeed speed_of(const Fitted& fitted, std::size_t anchor);
    FittedEngine& engine(const vehicle::Vehicle& fitted, scenario::UpgradeSet chosen,
                         const scenario::Choices& choices);

    const scenario::Scenario& scenario_;
    double anchor_spread_;
    std::map<scenario::Choices, std::unique_ptr<FittedEngine>> engines_;  // by their choices
    std::size_t likely_ = 0;  // of combinations: the fastest one of the last set
};

/// Says of a set why it has no answer.
void refuse(const solve::TopSpeed& found, SetResult& result);

}  // namespace windwall::study
