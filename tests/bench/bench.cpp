// Counts and times of operating points and top speeds. Not a test: the counts that are promised are
// held by tests/cpp/solve.
#include "windwall/engine/end_gas.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/study/batch.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include "variants.hpp"

namespace windwall::bench {
namespace {

using vehicle::Vehicle;

constexpr std::size_t variant_count = 600;
constexpr int repeats = 7;

double seconds() {
    using clock = std::chrono::steady_clock;
    return std::chrono::duration<double>(clock::now().time_since_epoch()).count();
}

double median(std::vector<double> numbers) {
    std::sort(numbers.begin(), numbers.end());
    return numbers.empty() ? 0 : numbers[numbers.size() / 2];
}

template <class Work>
double median_time(Work&& work) {
    std::vector<double> times;
    for (int i = 0; i < repeats; ++i) {
        const double start = seconds();
        work();
        times.push_back(seconds() - start);
    }
    return median(times);
}

/// What a second is worth on this core.
double million_exponentials() {
    volatile double sink = 0;
    return median_time([&] {
        double sum = 0;
        for (int i = 0; i < 1'000'000; ++i)
            sum += std::exp(-1e-6 * i);
        sink = sum;
    });
}

std::vector<Vehicle> load(int count, char** files) {
    std::vector<Vehicle> cars;
    for (int i = 0; i < count; ++i) {
        std::ifstream file(files[i]);
        std::ostringstream text;
        text << file.rdbuf();
        const auto loaded = scenario::load(text.str(), files[i]);
        if (loaded) cars.push_back(loaded.scenario->vehicle);
        if (!loaded) std::cerr << loaded.violation() << '\n';
    }
    return cars;
}

/// Residual evaluations of points taken from one to the next, the first one of each left out.
void count_points(const std::vector<Vehicle>& cars) {
    std::vector<double> warm, cold;
    const long integrals = engine::knock_integrals();
    for (const Vehicle& car : cars) {
        const solve::GearRange sweep(car, 0);
        solve::PointSolver solver(car);
        for (int i = 10; i >= 0; --i) {
            const long before = solver.evaluations();
            solver.at({sweep.at(0.1 * i).engine_speed, 20, 1});
            const auto spent = static_cast<double>(solver.evaluations() - before);
            (i == 10 ? cold : warm).push_back(spent);
        }
    }
    std::printf("residual evaluations: %.0f a warm point, %.0f a cold one (medians of %zu, %zu)\n",
                median(warm), median(cold), warm.size(), cold.size());
    std::printf("knock integrals a point: %.2f\n",
                static_cast<double>(engine::knock_integrals() - integrals) /
                    static_cast<double>(warm.size() + cold.size()));
}

void count_top_speeds(const std::vector<Vehicle>& cars) {
    std::vector<double> points, evaluations;
    int silent = 0;
    for (const Vehicle& car : cars) {
        const solve::TopSpeed found = solve::top_speed(car);
        if (!found.outcome.answered()) ++silent;
        points.push_back(static_cast<double>(found.points));
        evaluations.push_back(static_cast<double>(found.evaluations));
    }
    std::printf(
        "a top speed: %.0f points over all gears, %.0f evaluations (medians of %zu), at most "
        "%.0f points; %d have no answer\n",
        median(points), median(evaluations), cars.size(),
        *std::max_element(points.begin(), points.end()), silent);
}

double time_points(const Vehicle& car) {
    solve::PointSolver solver(car);
    const double speed = solve::GearRange(car, 0).at(1).engine_speed;
    constexpr int many = 2000;
    const auto work = [&] {
        for (int i = 0; i < many; ++i)
            solver.at({speed * (0.9 + 0.05 * (i % 3)), 20, 1});
    };
    return median_time(work) / many;
}

double time_top_speed(const Vehicle& car) {
    constexpr int many = 100;
    const auto work = [&] {
        for (int i = 0; i < many; ++i)
            solve::top_speed(car);
    };
    return median_time(work) / many;
}

double two_thread_ratio(const std::vector<Vehicle>& cars) {
    const auto batch = [&](unsigned threads) {
        return median_time([&] {
            study::run_batch(cars.size(),
                             [&] { return [&](std::size_t i) { solve::top_speed(cars[i]); }; },
                             {threads, {}});
        });
    };
    return batch(1) / batch(2);
}

void run(int count, char** files) {
    const std::vector<Vehicle> examples = load(count, files);
    if (examples.empty()) return;
    std::vector<Vehicle> cars = examples;
    Variants variants(examples);
    while (cars.size() < variant_count)
        cars.push_back(variants.next());
    count_points(cars);
    count_top_speeds(cars);
    const double unit = million_exponentials();
    std::printf("a million std::exp: %.2f ms\n", 1e3 * unit);
    for (std::size_t i = 0; i < examples.size(); ++i) {
        const double point = time_points(examples[i]), speed = time_top_speed(examples[i]);
        std::printf("%s: %.2f us a point (%.5f of them), %.1f us a top speed (%.4f of them)\n",
                    files[i], 1e6 * point, point / unit, 1e6 * speed, speed / unit);
    }
    std::printf("two threads against one: %.2f times as fast\n", two_thread_ratio(cars));
}

}  // namespace
}  // namespace windwall::bench

int main(int count, char** words) { windwall::bench::run(count - 1, words + 1); }
