// What the design of an engine chooses: that every row of its table counts, and that a mixture of
// classes is known worse than any.

#include "windwall/engine/class_priors.hpp"

#include "windwall/engine/select_priors.hpp"
#include "windwall/fields/field_path.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <set>

#include "engines.hpp"

namespace windwall::engine {
namespace {

constexpr Design road_engine{Chamber::two_valve_wedge, CooledBy::liquid, Duty::road,
                             MixtureBy::carburettor, Silencing::muffled};

bool nothing(std::string_view) { return false; }

/// An engine of which only its sizes and its design are stated.
Cylinder made(const Design& design) {
    Cylinder engine = single_499();
    engine.design = design;
    select_priors(engine, false, nothing);
    return engine;
}

const ClassQuantity& quantity(std::string_view address) {
    for (const ClassQuantity& one : class_quantities())
        if (one.address == address) return one;
    ADD_FAILURE() << address;
    return class_quantities().front();
}

/// What is predicted of an engine: torque, requirement and the other opinion of it, at two speeds.
std::array<double, 6> predicted(const Cylinder& engine) {
    const media::Fuel fuel;
    std::array<double, 6> all{};
    std::size_t at = 0;
    for (const double speed : {2500.0, 6500.0}) {
        const Intake intake = settled(engine, intake_at(speed * rpm, 99e3, 298.15), fuel);
        all[at++] = engine.work(intake, fuel, 0).torque();
        all[at++] = engine.best_spark(intake, fuel).requirement;
        all[at++] = engine.integral_requirement(intake, fuel, 0).value();
    }
    return all;
}

/// The full design with the words that a row needs.
Design with_words(const Design& when) {
    Design design = road_engine;
    for (std::size_t which = 0; which < Design::words; ++which)
        if (when.numbers()[which] != 0) design = design.with(which, when.numbers()[which]);
    return design;
}

TEST(ClassPriors, EveryRowIsAboutAQuantityAndSaysWhere) {
    for (const ClassPrior& prior : class_priors()) {
        EXPECT_EQ(quantity(prior.address).address, prior.address);
        EXPECT_TRUE(prior.when.known()) << prior.address;
        EXPECT_GE(prior.sigma, 0) << prior.address;
        EXPECT_FALSE(prior.source.empty()) << prior.address;
    }
}

TEST(ClassPriors, EveryRowStandsOnce) {
    std::set<std::pair<std::string_view, std::array<std::size_t, Design::words>>> seen;
    for (const ClassPrior& prior : class_priors())
        EXPECT_TRUE(seen.emplace(prior.address, prior.when.numbers()).second) << prior.address;
}

TEST(ClassPriors, EveryRowCountsWithItsWordsAndWithNoOthers) {
    for (const ClassPrior& prior : class_priors()) {
        const ClassQuantity& one = quantity(prior.address);
        double sum = 0;
        for (const ClassPrior* row : drawn_on(one, with_words(prior.when)))
            sum += row->value;
        EXPECT_NEAR(estimate(one, with_words(prior.when)).value, sum, 1e-12) << prior.address;
        bool drawn = false;
        for (const ClassPrior* row : drawn_on(one, with_words(prior.when)))
            drawn = drawn || row == &prior;
        EXPECT_TRUE(drawn) << prior.address;
    }
}

TEST(ClassPriors, EveryClassHasALevelOfEveryQuantity) {
    for (const ClassQuantity& one : class_quantities())
        for (std::size_t which = 0; which < Design::words; ++which)
            for (std::size_t word = 1; word < word_counts()[which]; ++word)
                EXPECT_GT(estimate(one, road_engine.with(which, word)).value, 0) << one.address;
}

TEST(ClassPriors, EveryQuantityMovesAPrediction) {
    const Cylinder engine = made(road_engine);
    const auto before = predicted(engine);
    for (const ClassQuantity& one : class_quantities()) {
        Cylinder moved = engine;
        const auto path = fields::find_number(fields::group_type<Cylinder>, &moved, one.address);
        ASSERT_TRUE(path) << path.violation;
        path->at(&moved) *= 1.05;
        EXPECT_NE(predicted(moved), before) << one.address;
    }
}

TEST(ClassPriors, RowsAndQuantitiesNameEachOther) {
    for (const ClassQuantity& one : class_quantities()) {
        const Cylinder engine{};
        const auto path = fields::find_number(fields::group_type<Cylinder>, &engine, one.address);
        EXPECT_EQ(path->row().chosen, "design") << one.address;
    }
}

TEST(ClassPriors, AWordLeftOutWidens) {
    for (const ClassQuantity& one : class_quantities())
        for (std::size_t which = 0; which < Design::words; ++which) {
            const Design open = road_engine.with(which, 0);
            const auto known = narrowed(one, open, which);
            if (!known) continue;
            EXPECT_GE(estimate(one, open).sigma, *known) << one.address;
            EXPECT_FALSE(narrowed(one, road_engine, which)) << one.address;
        }
    const Design no_chamber = road_engine.with(0, 0);
    const ClassQuantity& filling = quantity("breathing/peak_efficiency");
    EXPECT_GT(estimate(filling, no_chamber).sigma, 1.3 * estimate(filling, road_engine).sigma);
}

TEST(ClassPriors, AMixtureIsTheMeanOfItsClassesAndHoldsWhatIsBetweenThem) {
    const ClassQuantity& filling = quantity("breathing/peak_efficiency");
    double sum = 0, squares = 0;
    for (std::size_t word = 1; word < word_counts()[0]; ++word) {
        const Estimate one = estimate(filling, road_engine.with(0, word));
        sum += one.value;
        squares += one.sigma * one.sigma + one.value * one.value;
    }
    const Estimate open = estimate(filling, road_engine.with(0, 0));
    EXPECT_NEAR(open.value, sum / 4, 1e-12);
    EXPECT_NEAR(open.sigma, std::sqrt(squares / 4 - sum * sum / 16), 1e-12);
}

TEST(ClassPriors, WithoutADesignTheUsualValuesStand) {
    Cylinder engine = made({});
    const Cylinder usual{};
    EXPECT_EQ(engine.breathing.peak_efficiency, usual.breathing.peak_efficiency);
    EXPECT_FALSE(engine.breathing.best_speed);
    EXPECT_EQ(engine.knock_anchor.spread(), 10);
    engine = made(road_engine);
    engine.design = {};
    select_priors(engine, false, nothing);
    EXPECT_EQ(engine.breathing.fall_off, usual.breathing.fall_off);
    EXPECT_FALSE(engine.breathing.best_speed);
    EXPECT_EQ(engine.cooling.by, usual.cooling.by);
}

TEST(ClassPriors, TheBestSpeedIsASpeedOfTheGas) {
    const Cylinder engine = made(road_engine);
    const double gas = engine.piston_speed(*engine.breathing.best_speed) /
                       (engine.valves.per_side * std::pow(engine.valves.intake_ratio, 2));
    EXPECT_NEAR(gas, estimate(quantity("breathing/best_speed"), road_engine).value, 1e-9);
}

TEST(ClassPriors, LiquidCoolsByItsCoolant) {
    EXPECT_EQ(made(road_engine).cooling.by, CoolingBy::liquid);
    EXPECT_EQ(made(road_engine.with(1, 1)).cooling.by, CoolingBy::fan);
}

TEST(ClassPriors, TheFileTellsWhatTheBuilderLeftOut) {
    Cylinder engine = single_499();
    EXPECT_EQ(known_design(engine, true, nothing), Design{});
    engine.design.duty = Duty::sport;
    EXPECT_EQ(known_design(engine, true, nothing).mixture, MixtureBy::carburettor);
    engine.injector.emplace();
    EXPECT_EQ(known_design(engine, false, nothing).mixture, MixtureBy::ported_injection);
    engine.valves.per_side = 2;
    EXPECT_EQ(known_design(engine, false, nothing).chamber, Chamber::unknown);
    const auto stated = [](std::string_view) { return true; };
    EXPECT_EQ(known_design(engine, false, stated).chamber, Chamber::four_valve_pent_roof);
}

double torque(const Design& design) {
    const Cylinder engine = made(design);
    return best_work(engine, intake_at(4000 * rpm, 99e3, 298.15)).torque();
}

TEST(ClassPriors, BetterChambersPullHarder) {
    double before = 0;
    for (std::size_t chamber = 1; chamber < word_counts()[0]; ++chamber) {
        const double now = torque(road_engine.with(0, chamber));
        EXPECT_GT(now, before) << chamber;
        before = now;
    }
    EXPECT_GT(torque(road_engine.with(4, 2)), torque(road_engine));
    EXPECT_GT(torque(road_engine.with(3, 2)), torque(road_engine));
}

TEST(ClassPriors, FasterDutiesPullAtHigherSpeeds) {
    double before = 0;
    for (std::size_t duty = 1; duty < word_counts()[2]; ++duty) {
        const double now = *made(road_engine.with(2, duty)).breathing.best_speed;
        EXPECT_GT(now, before) << duty;
        before = now;
    }
}

TEST(ClassPriors, ASideValveAsksForMoreAndAPentRoofForLess) {
    const auto asked = [](std::size_t chamber) {
        return predicted(made(road_engine.with(0, chamber)))[1];
    };
    EXPECT_GT(asked(1), asked(2) + 3);
    EXPECT_LT(asked(4), asked(2) - 3);
    EXPECT_LT(made(road_engine).knock_anchor.spread(), 10);
}

TEST(ClassPriors, AnUpgradeThatChangesAWordKeepsTheDraw) {
    Cylinder before = made(road_engine);
    const Estimate was = estimate(quantity("exhaust/back_pressure"), before, before.design);
    before.exhaust.back_pressure += 0.5 * was.sigma;
    Cylinder after = before;
    after.design.exhaust = Silencing::open;
    move_priors(before, false, after, false, nothing);
    const Estimate is = estimate(quantity("exhaust/back_pressure"), after, after.design);
    EXPECT_NEAR(after.exhaust.back_pressure, is.value + 0.5 * is.sigma, 1e-9);
    EXPECT_EQ(after.breathing.peak_efficiency, before.breathing.peak_efficiency);
}

}  // namespace
}  // namespace windwall::engine
