#include "windwall/study/fair_share.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <bit>
#include <numeric>
#include <random>

namespace windwall::study {
namespace {

const auto anything = [](Set) { return true; };

double sum(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

// Closed form of the glove game: one left glove, m right gloves, a pair is worth 1. The left
// glove's Shapley value is m/(m+1), each right glove's 1/(m(m+1)). (Standard textbook example;
// derived: the left glove earns 1 unless it comes first of m+1; the rest is shared by symmetry.)
TEST(FairShare, GloveGame) {
    for (std::size_t m : {1u, 2u, 3u, 7u}) {
        const auto pair = [](Set s) { return holds(s, 0) && std::popcount(s) > 1 ? 1.0 : 0.0; };
        const Shares shares = fair_share(only(m + 1) - 1, m + 1, anything, pair);
        EXPECT_NEAR(shares.share[0], static_cast<double>(m) / static_cast<double>(m + 1), 1e-12);
        for (std::size_t i = 1; i <= m; ++i) {
            EXPECT_NEAR(shares.share[i], 1.0 / static_cast<double>(m * (m + 1)), 1e-12);
        }
    }
}

// Airport game: a set costs as much as its largest member. Closed form: each step of the runway is
// shared by those who need it (Littlechild and Owen, Management Science 20 (1973) 370).
TEST(FairShare, AirportGame) {
    constexpr std::array cost{1.0, 2.5, 4.0, 9.0};
    const auto largest = [&](Set s) {
        double most = 0;
        for (std::size_t i = 0; i < cost.size(); ++i) {
            if (holds(s, i)) most = std::max(most, cost[i]);
        }
        return most;
    };
    const Shares shares = fair_share(15, 4, anything, largest);
    double share = 0, step = 0;
    for (std::size_t i = 0; i < cost.size(); ++i) {
        share += (cost[i] - step) / static_cast<double>(cost.size() - i);
        step = cost[i];
        EXPECT_NEAR(shares.share[i], share, 1e-12);
    }
}

// Four upgrades, A bars B, C needs A; target {A, C, D}. Orders with C after A: ACD, ADC, DAC.
// v: {} 0, A 3, D 1, AC 10, AD 5, ACD 14.
//   ACD: A 3, C 7, D 4.   ADC: A 3, D 2, C 9.   DAC: D 1, A 4, C 9.
//   means: A 10/3, C 25/3, D 7/3.  Sum 42/3 = 14.
TEST(FairShare, RequirementsAndExclusionsByHand) {
    Relations relations{{0, 0, only(0), 0}, {only(1), 0, 0, 0}};
    relations = scenario::closed(relations);
    const auto may = [&](Set s) { return allowed(relations, s); };
    const auto value = [](Set s) -> double {
        switch (s) {
            case 0b0001: return 3;
            case 0b1000: return 1;
            case 0b0101: return 10;
            case 0b1001: return 5;
            case 0b1101: return 14;
            default: return 0;
        }
    };
    EXPECT_FALSE(may(0b0011));
    EXPECT_FALSE(may(0b0100));
    EXPECT_TRUE(may(0b1101));
    const Shares shares = fair_share(0b1101, 4, may, value);
    EXPECT_NEAR(shares.share[0], 10.0 / 3, 1e-12);
    EXPECT_EQ(shares.share[1], 0);
    EXPECT_NEAR(shares.share[2], 25.0 / 3, 1e-12);
    EXPECT_NEAR(shares.share[3], 7.0 / 3, 1e-12);
}

TEST(FairShare, AgreesWithWalkingEveryOrder) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> gain(-1, 3);
    std::vector<double> worth(64);
    for (double& w : worth)
        w = gain(random);
    Relations relations{{0, only(0), 0, 0, 0, 0}, {0, 0, only(3), 0, 0, 0}};
    relations = scenario::closed(relations);
    const auto may = [&](Set s) { return allowed(relations, s); };
    const auto value = [&](Set s) { return worth[s]; };
    const Set target = 0b110111;

    std::vector<std::size_t> order{0, 1, 2, 4, 5};
    std::vector<double> mean(6);
    double orders = 0;
    do {
        Set prefix = 0;
        const bool fits = std::all_of(order.begin(), order.end(),
                                      [&](std::size_t i) { return may(prefix |= only(i)); });
        if (!fits) continue;
        ++orders;
        prefix = 0;
        for (std::size_t i : order) {
            mean[i] += value(prefix | only(i)) - value(prefix);
            prefix |= only(i);
        }
    } while (std::next_permutation(order.begin(), order.end()));

    const Shares shares = fair_share(target, 6, may, value);
    for (std::size_t i = 0; i < 6; ++i)
        EXPECT_NEAR(shares.share[i], mean[i] / orders, 1e-12);
    EXPECT_NEAR(sum(shares.share), worth[target] - worth[0], 1e-9);
}

TEST(AllowedSets, RequirementsAreClosedAndExclusionsSymmetric) {
    const Relations relations = scenario::closed({{only(1), only(2), 0}, {0, 0, only(0)}});
    EXPECT_EQ(relations.required[0], only(1) | only(2));
    EXPECT_EQ(relations.excluded[0], only(2));
    EXPECT_EQ(allowed_sets(relations), (std::vector<Set>{0, 0b100, 0b110}));
    EXPECT_EQ(without(relations, 0b111, 2), Set{0});
}

}  // namespace
}  // namespace windwall::study
