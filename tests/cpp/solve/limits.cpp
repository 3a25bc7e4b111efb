// What ratings and classes of parts say must not be passed, wherever it stands in a vehicle.
#include "windwall/solve/answer/limits.hpp"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "every_part.hpp"
#include "solve/samples.hpp"

using namespace windwall;
using namespace windwall::solve;

namespace {

template <class T>
class EveryPart : public testing::Test {};
TYPED_TEST_SUITE(EveryPart, TypesOf<charge::Part>::type, ByKind);

/// Whether an address leads to a number of such a result, or of the whole point.
template <class Result>
bool leads_to_a_number(std::string_view address) {
    static const Result own{};
    OperatingPoint all;
    all.knock.emplace();
    all.injector.emplace();
    all.road.emplace();
    all.tyres.emplace();
    if (address.starts_with('/'))
        return bool(
            fields::find_number(fields::group_type<OperatingPoint>, &all, address.substr(1)));
    return bool(fields::find_number(fields::group_type<Result>, &own, address));
}

template <class Result>
void expect_results(const fields::GroupType& group) {
    for (const fields::Row& row : group.rows()) {
        if (row.is_rating()) {
            EXPECT_TRUE(leads_to_a_number<Result>(row.watched.result)) << row.watched.result;
        }
        if (row.member.group) expect_results<Result>(*row.member.group);
    }
    for (const auto& limit : group.limits)
        EXPECT_TRUE(leads_to_a_number<Result>(limit.result)) << limit.result;
    for (const auto& caution : group.cautions)
        EXPECT_TRUE(leads_to_a_number<Result>(caution.result)) << caution.result;
}

using Bounds = std::map<std::string, std::pair<std::optional<double>, std::optional<double>>>;

Bounds bounds(const vehicle::Vehicle& car) {
    Bounds all;
    for (const Limit& limit : built_in_limits(car))
        all[limit.address] = {limit.min, limit.max};
    return all;
}

std::set<std::string> silent(const vehicle::Vehicle& car) {
    const auto all = unrated(car);
    return {all.begin(), all.end()};
}

}  // namespace

TYPED_TEST(EveryPart, WatchesResultsThatItHas) {
    expect_results<ResultOf<TypeParam>>(fields::group_type<TypeParam>);
}

TEST(Limits, EnginesAndTyresWatchResultsThatThereAre) {
    expect_results<EngineResult>(fields::group_type<engine::Cylinder>);
    expect_results<EngineResult>(fields::group_type<engine::TorqueCurve>);
    expect_results<TyreResult>(fields::group_type<road::Tyres>);
}

TEST(Limits, WhatNobodyRatedIsSaidAndWhatAClassBearsHolds) {
    vehicle::Vehicle car = sample::cyclecar();
    const Bounds classes{{"knock/margin", {0.0, {}}},
                         {"engine/head_temperature", {{}, 273.15 + 250}},
                         {"charge_path/blower/inlet_depression", {{}, 30e3}}};
    EXPECT_EQ(bounds(car), classes);
    EXPECT_EQ(built_in_limits(car).front().address, "knock/margin");
    EXPECT_EQ(silent(car),
              (std::set<std::string>{"charge_path/blower/rotor_speed",
                                     "charge_path/blower/outlet/temperature",
                                     "charge_path/blower/load_ratio", "road/speed", "tyres/load"}));
}

TEST(Limits, RatingsWatchTheirResults) {
    vehicle::Vehicle car = sample::cyclecar();
    car.charge_path[2].part.as<charge::PositiveBlower>()->rated_pressure_ratio = 1.8;
    car.engine.as<engine::Cylinder>()->injector.emplace().rated_duty = 0.7;
    car.tyres.load_limit = 200;
    const Bounds found = bounds(car);
    EXPECT_EQ(found.size(), 6u);
    EXPECT_EQ(found.at("charge_path/blower/load_ratio").second, 1.8);
    EXPECT_EQ(found.at("injector/duty").second, 0.7);
    EXPECT_EQ(found.at("tyres/load").second, 200);
    EXPECT_EQ(silent(car).size(), 3u);
}

// The symbol T and the index 79 by the tables that tests/published holds against their standard.
TEST(Limits, ATyreIsRatedByItsSizeOrByWhatStandsInForIt) {
    vehicle::Vehicle car = sample::cyclecar();
    car.tyres.size = "155/80 R13 79T";
    EXPECT_NEAR(*bounds(car).at("road/speed").second, 190 / 3.6, 1e-9);
    EXPECT_EQ(bounds(car).at("tyres/load").second, 437);
    car.tyres.speed_limit = 30;
    EXPECT_EQ(bounds(car).at("road/speed").second, 30);
}
