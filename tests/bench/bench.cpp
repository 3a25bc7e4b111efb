// Counts and times of operating points, top speeds and drives. Not a test: the counts that are
// promised are held by tests/cpp/solve.
#include "windwall/engine/end_gas.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/study/batch.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <ctime>
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

/// Of this process alone: waiting for a busy machine does not lengthen them.
double processor_seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

double median(std::vector<double> numbers) {
    std::sort(numbers.begin(), numbers.end());
    return numbers.empty() ? 0 : numbers[numbers.size() / 2];
}

template <class Work>
double median_time(Work&& work, double (*clock)() = processor_seconds) {
    std::vector<double> times;
    for (int i = 0; i < repeats; ++i) {
        const double start = clock();
        work();
        times.push_back(clock() - start);
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

struct Evaluations {
    std::vector<double> warm, cold;

    void add(bool is_cold, double spent) { (is_cold ? cold : warm).push_back(spent); }
    void print(const char* of) const {
        if (warm.empty() || cold.empty()) return;
        std::printf(
            "residual evaluations of %s: %.0f warm, %.0f cold (medians of %zu, %zu), at most "
            "%.0f\n",
            of, median(warm), median(cold), warm.size(), cold.size(),
            std::max(*std::ranges::max_element(warm), *std::ranges::max_element(cold)));
    }
};

/// Residual evaluations of points taken from one to the next; the first of each vehicle is cold,
/// and so is the first that knock limits.
void count_points(const std::vector<Vehicle>& cars) {
    Evaluations free, limited;
    const long integrals = engine::knock_integrals();
    for (const Vehicle& car : cars) {
        const solve::GearRange sweep(car, 0);
        solve::PointSolver solver(car);
        bool knocked = false;
        for (int i = 10; i >= 0; --i) {
            const long before = solver.evaluations();
            const auto point = solver.at({sweep.at(0.1 * i).engine_speed, 20, 1});
            const auto spent = static_cast<double>(solver.evaluations() - before);
            const bool knocks = point.outcome.status == solve::Status::knock_limited;
            (knocks ? limited : free).add(i == 10 || (knocks && !knocked), spent);
            knocked = knocks;
        }
    }
    free.print("a point");
    limited.print("a knock-limited point");
    std::printf("knock integrals a point: %.2f\n",
                static_cast<double>(engine::knock_integrals() - integrals) /
                    static_cast<double>(11 * cars.size()));
}

/// The same with engines that ask for far more octane than the fuel has.
void count_knocking_points(std::vector<Vehicle> cars) {
    for (Vehicle& car : cars)
        std::visit(
            [](auto& engine) {
                if constexpr (requires { engine.knock_anchor; })
                    engine.knock_anchor.octane_number += 20;
            },
            car.engine.value);
    count_points(cars);
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

struct PointCost {
    double seconds, evaluations;
};

/// At full throttle, each from the one before or each from the first guess; peer_check.py asks for
/// the same ones.
PointCost cost_of_points(const Vehicle& car, bool cold) {
    solve::PointSolver solver(car);
    const double speed = solve::GearRange(car, 0).at(1).engine_speed;
    constexpr int many = 2000;
    const auto work = [&] {
        for (int i = 0; i < many; ++i) {
            if (cold) solver.forget();
            solver.at({speed * (0.9 + 0.05 * (i % 3)), 20, 1});
        }
    };
    const double spent = median_time(work) / many;
    return {spent,
            static_cast<double>(solver.evaluations()) / static_cast<double>(solver.points())};
}

double time_top_speed(const Vehicle& car) {
    constexpr int many = 100;
    const auto work = [&] {
        for (int i = 0; i < many; ++i)
            solve::top_speed(car);
    };
    return median_time(work) / many;
}

/// From standstill with all warmed through, through the gears a little below the rev limit;
/// bench.py asks the twin for the same.
vehicle::Outing standing_kilometre(const Vehicle& car) {
    vehicle::FullThrottle leg;
    leg.for_distance = 1000;
    vehicle::Outing made;
    made.id = "kilometre";
    made.starts = vehicle::Starts::soaked;
    made.shift_speed = 0.92 * vehicle::speed_limit(car);
    made.launch_gear = 1;
    made.legs = {leg};
    return made;
}

void time_drive(const Vehicle& car, const char* file, double unit) {
    const vehicle::Outing outing = standing_kilometre(car);
    const solve::DriveResult drive = solve::drive(car, outing);
    if (drive.end != solve::DriveEnd::legs_done) {
        const auto end = static_cast<std::size_t>(drive.end);
        std::printf("%s: no standing kilometre, %s\n", file, solve::drive_end_names[end].data());
        return;
    }
    const double lasts = drive.columns.front().back();  // s
    const auto evaluations = static_cast<double>(drive.evaluations);
    const double spent = median_time([&] { solve::drive(car, outing); });
    std::printf(
        "%s: %.2f ms a standing kilometre of %.2f s (%.3f of them), %.1f right-hand sides a second "
        "of it, %.2f points each\n",
        file, 1e3 * spent, lasts, spent / unit, evaluations / lasts,
        static_cast<double>(drive.points) / evaluations);
}

double two_thread_ratio(const std::vector<Vehicle>& cars) {
    const auto batch = [&](unsigned threads) {
        const auto work = [&] {
            study::run_batch(cars.size(),
                             [&] { return [&](std::size_t i) { solve::top_speed(cars[i]); }; },
                             {threads, {}});
        };
        return median_time(work, seconds);
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
    std::printf("with 20 octane numbers less to spare:\n");
    count_knocking_points(cars);
    count_top_speeds(cars);
    const double unit = million_exponentials();
    std::printf("a million std::exp: %.2f ms\n", 1e3 * unit);
    for (std::size_t i = 0; i < examples.size(); ++i) {
        const double point = cost_of_points(examples[i], false).seconds;
        const double speed = time_top_speed(examples[i]);
        std::printf("%s: %.2f us a point (%.5f of them), %.1f us a top speed (%.4f of them)\n",
                    files[i], 1e6 * point, point / unit, 1e6 * speed, speed / unit);
    }
    for (std::size_t i = 0; i < examples.size(); ++i)
        time_drive(examples[i], files[i], unit);
    std::printf("two threads against one: %.2f times as fast\n", two_thread_ratio(cars));
}

/// Points alone, for what is timed in turn with them.
void run_points(int count, char** files) {
    for (const Vehicle& car : load(count, files))
        for (const bool cold : {true, false}) {
            const PointCost cost = cost_of_points(car, cold);
            std::printf("%.4f us %.2f evaluations\n", 1e6 * cost.seconds, cost.evaluations);
        }
}

}  // namespace
}  // namespace windwall::bench

int main(int count, char** words) {
    if (count > 1 && std::string(words[1]) == "points")
        windwall::bench::run_points(count - 2, words + 2);
    else
        windwall::bench::run(count - 1, words + 1);
}
