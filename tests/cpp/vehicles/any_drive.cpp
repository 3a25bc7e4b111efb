#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <iomanip>
#include <map>
#include <numeric>
#include <optional>
#include <sstream>
#include <string>

#include "energy_left.hpp"
#include "random_outings.hpp"
#include "random_vehicles.hpp"
#include "solve/drive_column.hpp"

namespace windwall::solve {
namespace {

using random_outings::Outings;
using vehicle::Leg;
using vehicle::Outing;

struct Count {
    int drives = 0, invalid = 0, broken = 0, slow = 0;
    double slowest = 0;
    std::map<std::string, int> ends{}, events{};
};

std::optional<int> asked(const char* what) {
    const char* number = std::getenv(what);
    return number != nullptr ? std::optional(std::atoi(number)) : std::nullopt;
}

/// Of all that went to and fro.
double energy_moved(const DriveResult& drive) {
    double most = std::max(drive.kinetic_before, drive.kinetic_after);
    for (std::size_t i = static_cast<std::size_t>(Energy::crank); i < energies; ++i)
        most = std::max(most, std::abs(drive.energy[i]));
    return std::max(most, std::abs(drive.changed));
}

/// Of a part that warms up, not of an operating point.
bool is_node(const std::string& address) {
    for (const std::string_view end :
         {"/head/temperature", "/oil/temperature", "/block/temperature", "/case/temperature",
          "/wall/temperature", "/core/temperature", "/belt/temperature",
          "under_hood/air/temperature"})
        if (address.ends_with(end)) return true;
    return false;
}

std::string placed(const DriveResult& drive, const std::string& address, std::size_t at) {
    return address + " at " + std::to_string(column(drive, "time")[at]) + " s, " +
           std::string(phase_names.at(static_cast<std::size_t>(drive.phase[at])));
}

std::string without_numbers(const DriveResult& drive) {
    const auto& pressure = column(drive, "manifold/pressure");
    for (std::size_t i = 0; i < drive.addresses.size(); ++i) {
        const std::string& address = drive.addresses[i];
        const bool always = i < 9 || address.starts_with("road/") || is_node(address);
        const bool answered = address == "manifold/temperature" || address == "manifold/air_flow" ||
                              address == "engine/torque" || address == "engine/fuel_flow";
        for (std::size_t at = 0; at < drive.phase.size(); ++at) {
            const double number = drive.columns[i][at];
            const bool due = always || (answered && std::isfinite(pressure[at]));
            if (std::isinf(number) || (due && !std::isfinite(number)))
                return placed(drive, address, at);
        }
    }
    for (std::size_t at = 0; at < drive.phase.size(); ++at)
        if (drive.end != DriveEnd::no_answer && drive.phase[at] != Phase::engine_off &&
            drive.phase[at] != Phase::shifting && !std::isfinite(pressure[at]))
            return placed(drive, "manifold/pressure", at);
    return {};
}

/// Where a column goes back that never does.
std::string where_it_falls(const DriveResult& drive, const std::string& address) {
    const auto& values = column(drive, address);
    const auto at = std::ranges::is_sorted_until(values);
    if (at == values.end()) return {};
    std::ostringstream by;
    by << ", by " << *std::prev(at) - *at;
    return placed(drive, address, static_cast<std::size_t>(at - values.begin())) + by.str();
}

void look_at(const DriveResult& drive, const std::string& told) {
    if (drive.columns.empty()) {
        EXPECT_EQ(drive.end, DriveEnd::no_answer) << told;
        return;
    }
    const auto& time = column(drive, "time");
    EXPECT_EQ(where_it_falls(drive, "time"), "") << told;
    EXPECT_EQ(where_it_falls(drive, "distance"), "") << told;
    EXPECT_EQ(without_numbers(drive), "") << told;
    EXPECT_TRUE(std::ranges::is_sorted(drive.events, {}, &DriveEvent::time)) << told;
    for (const DriveEvent& event : drive.events) {
        EXPECT_GE(event.time, 0) << told;
        EXPECT_LE(event.time, time.back() + 1e-9) << told;
        EXPECT_TRUE(std::isfinite(event.distance + event.road_speed + event.engine_speed)) << told;
    }
}

std::string worded(const Outing& outing) {
    std::string words = " starts " + std::to_string(static_cast<int>(outing.starts));
    for (const Leg& leg : outing.legs)
        words += " " + std::string(leg.kind());
    return words;
}

/// Each of nine energies is integrated to 1e-6 of its size, so that one drive in hundreds misses by
/// a little more than that. What is lost stays lost, whatever the tolerance; what is not yet
/// integrated well goes with it.
void expect_closed(const DriveResult& drive, const vehicle::Vehicle& car, const Outing& outing,
                   const std::string& told) {
    const double left = std::abs(energy_left(drive));
    if (left <= 2e-6 * energy_moved(drive) + 1e-3) return;
    const DriveResult closer = solve::drive(car, outing, {.tolerance = 1e-7});
    EXPECT_LE(std::abs(energy_left(closer)), left / 5) << told;
    std::printf("left %.3g J, then %.3g J, %s\n", left, energy_left(closer), told.c_str());
}

/// What is lacking is called by a name that lasts as long as the vehicle that was driven.
void expect_lasting_name(const DriveResult& drive, const vehicle::Vehicle& car) {
    const std::string_view name = drive.outcome.worst;
    for (const auto& entry : car.charge_path)
        if (entry.id == name) {
            EXPECT_EQ(static_cast<const void*>(name.data()), entry.id.data());
        }
    EXPECT_TRUE(std::ranges::all_of(name, [](unsigned char letter) {
        return std::isalnum(letter) || letter == '_';
    })) << std::quoted(std::string(name));
}

void tell(const DriveResult& drive) {
    for (const DriveEvent& event : drive.events)
        std::printf("%10.6f s %10.4f m %9.5f m/s %9.4f rad/s  leg %ld gear %ld %s\n", event.time,
                    event.distance, event.road_speed, event.engine_speed, event.leg, event.gear,
                    happening_names.at(static_cast<std::size_t>(event.what)).data());
}

void drive_it(const fields::Json& text, const Outing& outing, int number, Count& count) {
    const auto loaded = scenario::load(text.dump());
    const std::clock_t before = std::clock();
    const DriveResult drive = solve::drive(loaded.scenario->vehicle, outing);
    const double spent = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
    const std::string end(drive_end_names.at(static_cast<std::size_t>(drive.end)));
    ++count.ends[end];
    for (const DriveEvent& event : drive.events)
        ++count.events[std::string(happening_names.at(static_cast<std::size_t>(event.what)))];
    const std::string told =
        "drive " + std::to_string(number) + worded(outing) + " " + end + ": " + text.dump();
    if (drive.outcome.status == Status::broken_off) {
        ++count.broken;
        std::printf("broke off, %s\n", told.c_str());
    }
    count.slowest = std::max(count.slowest, spent);
    if (spent > 5) {
        ++count.slow;
        std::printf("slow, %.1f s, %ld steps, %s\n", spent, drive.steps, told.c_str());
    }
    if (drive.end == DriveEnd::too_many_events)
        std::printf("events without end, %s\n", told.c_str());
    if (asked("WINDWALL_ONLY")) tell(drive);
    look_at(drive, told);
    expect_closed(drive, loaded.scenario->vehicle, outing, told);
    expect_lasting_name(drive, loaded.scenario->vehicle);
}

// Vehicles made from the rows, each with an outing of its own. WINDWALL_VEHICLES asks for more,
// WINDWALL_ONLY for one of them alone, by its number, with its events.
TEST(AnyDrive, EndsByANameAndLosesNothing) {
    Count count{.drives = asked("WINDWALL_VEHICLES").value_or(30)};
    random_vehicles::Maker maker(20263);
    Outings outings(20264);
    const std::optional<int> only = asked("WINDWALL_ONLY");
    for (int i = 0; i < count.drives; ++i) {
        const Outing outing = outings.next();
        const auto text = maker.next();
        if (only && *only != i) continue;
        if (text)
            drive_it(*text, outing, i, count);
        else
            ++count.invalid;
    }
    std::printf("%d drives: %d without a valid vehicle", count.drives, count.invalid);
    for (const auto& [end, times] : count.ends)
        std::printf(", %d %s", times, end.c_str());
    std::printf("; %d broke off, %d over 5 s, slowest %.2f s; events:", count.broken, count.slow,
                count.slowest);
    for (const auto& [what, times] : count.events)
        std::printf(" %d %s", times, what.c_str());
    std::printf("\n");
    EXPECT_EQ(count.broken, 0);
    EXPECT_LT(count.invalid, count.drives / 2);
    EXPECT_EQ(count.ends["too_many_events"], 0);
    if (only) return;
    // Some of every way to end, or what was looked at is not every way.
    for (const std::string end : {"legs_done", "no_more_speed", "stalled"})
        EXPECT_GT(count.ends[end], 0) << end;
}

}  // namespace
}  // namespace windwall::solve
