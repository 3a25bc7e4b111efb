#include "windwall/study/columns.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>

#include "solve/samples.hpp"

namespace windwall::study {
namespace {

Variants drive_ratios(const vehicle::Vehicle& car) {
    const auto path = [&](std::string_view address) {
        return *fields::find_number(fields::group_type<vehicle::Vehicle>, &car, address);
    };
    Variants variants{{path("charge_path/blower/drive_ratio"), path("body/drag_area")}, {{}, {}}};
    for (int i = 0; i < 24; ++i) {
        variants.values[0].push_back(1.1 + 0.03 * i);
        variants.values[1].push_back(0.7 - 0.01 * i);
    }
    return variants;
}

bool same_bits(const std::vector<double>& a, const std::vector<double>& b) {
    return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0;
}

TEST(Columns, EqualReversedAndOneByOneBitForBit) {
    const vehicle::Vehicle car = sample::cooled_cyclecar();
    const Variants forward = drive_ratios(car);
    const std::vector<std::string> outputs{"manifold/boost",
                                           "charge_path/blower/outlet/temperature"};
    const AnswerColumns once = solve_columns(car, forward, outputs, {2, {}});

    Variants backward = forward;
    for (auto& column : backward.values)
        std::reverse(column.begin(), column.end());
    AnswerColumns reversed = solve_columns(car, backward, outputs, {1, {}});
    std::reverse(reversed.speed.begin(), reversed.speed.end());
    EXPECT_TRUE(same_bits(once.speed, reversed.speed));
    for (auto& column : reversed.outputs)
        std::reverse(column.begin(), column.end());
    EXPECT_TRUE(same_bits(once.outputs[0], reversed.outputs[0]));
    EXPECT_TRUE(same_bits(once.outputs[1], reversed.outputs[1]));

    for (std::size_t i = 0; i < forward.size(); ++i) {
        const Variants single{forward.inputs, {{forward.values[0][i]}, {forward.values[1][i]}}};
        EXPECT_EQ(solve_columns(car, single, {}, {1, {}}).speed[0], once.speed[i]);
    }
}

TEST(Columns, WhatIsNotReachedIsCancelled) {
    const vehicle::Vehicle car = sample::cyclecar();
    Variants variants = drive_ratios(car);
    for (auto& column : variants.values)
        column.resize(200000, column.front());
    const AnswerColumns answers =
        solve_columns(car, variants, {}, {2, [](std::size_t, std::size_t) { return false; }});
    EXPECT_EQ(answers.status.back(), solve::Status::cancelled);
    EXPECT_TRUE(std::isnan(answers.speed.back()));
    EXPECT_EQ(answers.status.front(), solve::Status::solved);
}

TEST(Columns, WithoutAnAnswerTheStatusSaysWhy) {
    const vehicle::Vehicle car = sample::cyclecar();
    const auto path = fields::find_number(fields::group_type<vehicle::Vehicle>, &car, "body/mass");
    const AnswerColumns answers = solve_columns(car, {{*path}, {{348.0, 1e6}}});
    EXPECT_EQ(answers.status[0], solve::Status::solved);
    EXPECT_EQ(answers.status[1], solve::Status::no_balance);
    EXPECT_TRUE(std::isnan(answers.speed[1]));
}

}  // namespace
}  // namespace windwall::study
