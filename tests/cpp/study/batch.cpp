#include "windwall/study/batch.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <stdexcept>
#include <thread>
#include <vector>

namespace windwall::study {
namespace {

TEST(Batch, EveryItemOnceWhateverTheThreads) {
    for (unsigned threads : {1u, 2u, 5u}) {
        std::vector<int> times(1000);
        const auto make = [&] { return [&](std::size_t item) { ++times[item]; }; };
        EXPECT_EQ(run_batch(times.size(), make, {threads, {}}), times.size());
        for (int count : times)
            EXPECT_EQ(count, 1);
    }
}

TEST(Batch, NothingToDo) {
    const auto make = [] { return [](std::size_t) { FAIL(); }; };
    EXPECT_EQ(run_batch(0, make), 0u);
}

TEST(Batch, StopsWhenAskedAndKeepsWhatIsDone) {
    std::atomic<std::size_t> finished{0};
    const auto make = [&] {
        return [&](std::size_t) {
            std::this_thread::sleep_for(std::chrono::milliseconds(5));
            ++finished;
        };
    };
    const auto stop_at_once = [](std::size_t, std::size_t) { return false; };
    const std::size_t done = run_batch(100000, make, {2, stop_at_once});
    EXPECT_LT(done, 1000u);
    EXPECT_EQ(done, finished);
}

TEST(Batch, EachWorkerHasItsOwnWorkspace) {
    std::atomic<int> made{0};
    const auto make = [&] {
        ++made;
        return [count = 0](std::size_t) mutable { ++count; };
    };
    run_batch(10, make, {3, {}});
    EXPECT_EQ(made, 3);
}

TEST(Batch, NeverStartsMoreThreadsThanAMachineGives) {
    std::atomic<int> made{0};
    const auto make = [&] {
        ++made;
        return [](std::size_t) {};
    };
    EXPECT_EQ(run_batch(100000, make, {100000, {}}), 100000u);
    EXPECT_LE(made, 256);
}

// An exception that leaves a thread ends the process.
TEST(Batch, WhatAWorkerThrowsArrivesWhereTheBatchWasAskedFor) {
    for (unsigned threads : {1u, 2u, 5u}) {
        std::atomic<std::size_t> finished{0};
        const auto make = [&] {
            return [&](std::size_t item) {
                if (item == 7) throw std::invalid_argument("the seventh");
                ++finished;
            };
        };
        EXPECT_THROW(run_batch(100000, make, {threads, {}}), std::invalid_argument);
        EXPECT_LT(finished, 100000u);
    }
}

}  // namespace
}  // namespace windwall::study
