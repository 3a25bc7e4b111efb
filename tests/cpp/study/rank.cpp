#include "windwall/study/rank.hpp"

#include "windwall/scenario/install.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/study/fitted_engine.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace windwall::study {
namespace {

// A blown twin on a hot day whose drag, not its gearing, holds it back.
const std::string vehicle_text = R"({
  "format": "windwall-scenario/2",
  "title": "A cyclecar for tests",
  "goal": {"speed": "150 km/h", "run_up": "1600 m"},
  "day": {"temperature": "33 degC", "pressure": "98.4 kPa", "relative_humidity": "35 %"},
  "body": {"mass": "348 kg", "drag_area": "0.72 m2"},
  "charge_path": [
    {"id": "throttle", "kind": "throttle", "bore": "36 mm"},
    {"id": "blower", "kind": "positive_blower", "displacement": "230 cm3", "drive_ratio": 1.45,
     "leak_area": "9 mm2", "rated_outlet_temperature": "150 degC"}
  ],
  "engine": {"kind": "cylinder", "cylinders": 2, "bore": "76 mm", "stroke": "68.8 mm",
             "compression_ratio": 8, "rev_limit": "6500 rpm"},
  "driveline": [
    {"id": "clutch", "kind": "clutch"},
    {"id": "gearbox", "kind": "gearbox", "ratios": [3.2, 2.0, 1.45, 1.1]},
    {"id": "axle", "kind": "final_drive", "ratio": 3.6}
  ],
  "tyres": {"rolling_radius": "0.28 m"},
  "upgrades": [)";

const std::string pulley = R"({"id": "pulley", "cost": "45 EUR", "hours": 2,
  "set": {"charge_path/blower/drive_ratio": 1.75}})";
const std::string intercooler = R"({"id": "intercooler", "cost": "260 EUR", "hours": 12, "insert": [
  {"after": ["blower"], "part": {"id": "core", "kind": "charge_cooler", "conductance": "70 W/K",
   "at_charge_flow": "25 g/s", "at_cooling_flow": "250 g/s", "drop": "1.5 kPa",
   "face_area": "400 cm2"}}]})";
const std::string nose = R"({"id": "nose", "cost": "180 EUR", "hours": 20,
  "scale": {"body/drag_area": 0.9}})";
const std::string tail = R"({"id": "tail", "cost": "150 EUR", "requires": ["nose"],
  "scale": {"body/drag_area": 0.95}})";
const std::string windscreen = R"({"id": "windscreen", "cost": "20 EUR", "excludes": ["nose"],
  "scale": {"body/drag_area": 0.97}})";
const std::string gearing = R"({"id": "gearing", "cost": "120 EUR", "hours": 6,
  "choose": {"driveline/axle/ratio": [3.2, 3.9]}})";

scenario::Scenario make(const std::vector<std::string>& upgrades, const std::string& from = "",
                        const std::string& to = "") {
    std::string text = vehicle_text;
    for (std::size_t i = 0; i < upgrades.size(); ++i)
        text += (i > 0 ? "," : "") + upgrades[i];
    text += "]}";
    if (!from.empty()) text.replace(text.find(from), from.size(), to);
    const scenario::Loaded loaded = scenario::load(text, "test");
    EXPECT_TRUE(loaded) << loaded.violation();
    return *loaded.scenario;
}

const UpgradeGain& gain(const Ranking& ranking, std::string_view id) {
    return *std::find_if(ranking.upgrades.begin(), ranking.upgrades.end(),
                         [&](const UpgradeGain& one) { return one.id == id; });
}

TEST(Rank, SharesSumToTheGainOfTheTarget) {
    const auto car = make({pulley, intercooler, nose, tail, windscreen, gearing});
    const Ranking ranking = rank(car);
    ASSERT_EQ(ranking.status, solve::Status::solved);
    ASSERT_TRUE(ranking.target);
    const SetResult& target = ranking.sets[*ranking.target];
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        double sum = 0;
        for (const UpgradeGain& w : ranking.upgrades) {
            if (w.in_target) sum += w.share[anchor];
        }
        EXPECT_NEAR(sum, target.speed[anchor] - ranking.sets[0].speed[anchor], 1e-9);
    }
}

/// Of a set with these values of its choices, solved by itself at one of the anchors.
double speed(const scenario::Scenario& car, const Ranking& ranking, const SetResult& one,
             const scenario::Choices& choices, std::size_t anchor) {
    const auto fitted = scenario::install(car, in_menu(ranking, one.set), choices);
    const double shift = ranking.knock_anchors[anchor] - ranking.knock_anchors[middle];
    return solve::top_speed(at_anchor(std::get<vehicle::Vehicle>(fitted), shift)).speed();
}

TEST(Rank, EverySpeedIsThatOfTheFittedVehicle) {
    const auto car = make({pulley, intercooler, gearing});
    const Ranking ranking = rank(car);
    ASSERT_EQ(ranking.sets.size(), 8u);
    for (const SetResult& result : ranking.sets)
        for (std::size_t anchor = 0; anchor < anchors; ++anchor)
            EXPECT_EQ(speed(car, ranking, result, result.choices[anchor], anchor),
                      result.speed[anchor]);
}

TEST(Rank, AnOpenChoiceTakesWhatIsFastestAtEachAnchor) {
    const auto car = make({pulley, intercooler, gearing});
    const Ranking ranking = rank(car);
    const SetResult& geared = ranking.sets[4];
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        ASSERT_EQ(geared.choices[anchor].size(), 1u);
        for (std::size_t other : {0u, 1u})
            EXPECT_LE(speed(car, ranking, geared, {other}, anchor), geared.speed[anchor]);
    }
}

TEST(Rank, RequirementsAndExclusionsLeaveOnlyAllowedSets) {
    const auto car = make({nose, tail, windscreen});
    const Ranking ranking = rank(car);
    // {}, nose, nose+tail, windscreen
    ASSERT_EQ(ranking.sets.size(), 4u);
    EXPECT_TRUE(gain(ranking, "tail").in_target);
    EXPECT_EQ(gain(ranking, "windscreen").outside, Outside::excluded);
    // Tail is worth what it adds to a car that already has what it needs.
    EXPECT_NEAR(gain(ranking, "tail").alone[middle],
                ranking.sets[2].speed[middle] - ranking.sets[1].speed[middle], 1e-12);
    // Only nose, then tail is an allowed order: the shares are the two steps.
    EXPECT_NEAR(gain(ranking, "nose").share[middle],
                ranking.sets[1].speed[middle] - ranking.sets[0].speed[middle], 1e-12);
    // Taking nose away takes tail along.
    EXPECT_NEAR(gain(ranking, "nose").last[middle],
                ranking.sets[2].speed[middle] - ranking.sets[0].speed[middle], 1e-12);
}

TEST(Rank, BudgetBoundsTheTargetAndMoreMoneyIsNeverSlower) {
    const auto car = make({pulley, intercooler, nose, tail, gearing});
    RankOptions options;
    options.budget = 200;
    const Ranking ranking = rank(car, options);
    ASSERT_TRUE(ranking.target);
    EXPECT_LE(ranking.sets[*ranking.target].cost, 200);
    double cost = -1, speed = 0;
    for (std::size_t i : ranking.best_by_cost) {
        EXPECT_GT(ranking.sets[i].cost, cost);
        EXPECT_GT(ranking.sets[i].speed[middle], speed);
        cost = ranking.sets[i].cost;
        speed = ranking.sets[i].speed[middle];
    }
}

// The octane number an engine asks for at its anchor moves the ranking: where it knocks early, more
// boost buys retard and a cooler buys it back; where it knocks late, boost is worth its full price.
TEST(Rank, KnockAnchorMovesTheRanking) {
    const auto car = make({pulley, intercooler});
    const Ranking ranking = rank(car);
    ASSERT_EQ(ranking.knock_anchors[0], 82);
    ASSERT_EQ(ranking.knock_anchors[2], 102);
    const auto& boost = gain(ranking, "pulley").alone;
    const auto& cold = gain(ranking, "intercooler").alone;
    std::printf("anchor      82      92     102\npulley  %+7.2f %+7.2f %+7.2f km/h\n",
                boost[0] * 3.6, boost[1] * 3.6, boost[2] * 3.6);
    std::printf("cooler  %+7.2f %+7.2f %+7.2f km/h\n", cold[0] * 3.6, cold[1] * 3.6, cold[2] * 3.6);
    EXPECT_GT(boost[0], boost[1]);
    EXPECT_GT(boost[1], boost[2]);
    EXPECT_LT(cold[0], cold[1]);
    EXPECT_GT(cold[2], 0);  // throttled to hold the margin, the car can use cold charge still
    EXPECT_GT(boost[0], cold[0]);
    EXPECT_LT(boost[2], cold[2]);
}

TEST(Rank, MissingToTheGoalIsWhatWouldReachIt) {
    const auto car = make({pulley});
    const Ranking ranking = rank(car);
    ASSERT_FALSE(ranking.cheapest_to_goal);
    ASSERT_TRUE(ranking.missing);
    ASSERT_TRUE(ranking.missing->drag_area);
    const SetResult& best = ranking.sets[ranking.best_by_cost.back()];
    auto slim = std::get<vehicle::Vehicle>(
        scenario::install(car, in_menu(ranking, best.set), best.choices[middle]));
    slim.body.drag_area -= *ranking.missing->drag_area;
    EXPECT_NEAR(solve::top_speed(slim).speed(), 150 / 3.6, 1e-4);
}

TEST(Rank, CheapestSetToTheGoal) {
    const auto car = make({pulley, nose}, "150 km/h", "60 km/h");
    const Ranking ranking = rank(car);
    ASSERT_TRUE(ranking.cheapest_to_goal);
    EXPECT_EQ(ranking.sets[*ranking.cheapest_to_goal].set, Set{0});
    EXPECT_FALSE(ranking.missing);
}

TEST(Rank, SetsThatPassALimitAreNeverRecommended) {
    const auto car = make({pulley, nose}, "150 degC", "60 degC");
    const Ranking ranking = rank(car);
    for (const SetResult& result : ranking.sets) {
        EXPECT_FALSE(result.recommended);
        ASSERT_FALSE(result.passed.empty());
        EXPECT_EQ(result.refused_for, Refusal::passes_limit);
        EXPECT_EQ(result.passed[0].address, "charge_path/blower/outlet/temperature");
        EXPECT_GT(result.passed[0].worst, 333.15);
    }
    EXPECT_FALSE(ranking.target);
}

TEST(Rank, StopsWhenAskedAndSaysSo) {
    const auto car = make({pulley, intercooler, nose, tail, windscreen, gearing});
    RankOptions options;
    options.batch = {1, [](std::size_t, std::size_t) { return false; }};
    // The wait listens ten times a second, so a short ranking may be over before it is asked.
    const Ranking ranking = rank(car, options);
    const bool complete = ranking.sets.size() == rank(car, {}).sets.size();
    EXPECT_EQ(ranking.status == solve::Status::solved, complete);
}

TEST(Rank, OnlyTheNamedUpgrades) {
    const auto car = make({pulley, nose, tail});
    RankOptions options;
    options.upgrades = std::vector<std::string>{"pulley", "tail"};
    const Ranking ranking = rank(car, options);
    ASSERT_EQ(ranking.upgrades.size(), 1u);  // tail needs nose, which was left out
    EXPECT_EQ(ranking.upgrades[0].id, "pulley");
}

}  // namespace
}  // namespace windwall::study
