#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/fields/row.hpp"

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::scenario {

struct Scenario;

inline constexpr std::size_t most_correlations = 512;

/// Two uncertain numbers that are wrong together: measured by one coast-down, say, or by one scale.
struct Correlation {
    static constexpr std::string_view description = "Two uncertain numbers that err together.";
    std::array<std::string, 2> between;  // addresses, those of an upgrade below `upgrades/<id>/`
    double correlation{};                // of their normal scores
    std::string why;

    static std::span<const fields::Row> rows();
};

/// Reads the correlations of a file whose vehicle, menu and notes are read. What is refused: an
/// address without a +/-, a pair named twice, and one with which nothing could be drawn any more.
std::vector<Correlation> read_correlations(const fields::Cursor& list, const Scenario& made);

/// Those of the file, and what the rated figures leave between the inputs that they settled, unless
/// the file says something of one of these.
std::vector<Correlation> all_correlations(const Scenario& scenario);

/// Writes down what the rated figures leave, as if the file had said it, but nothing of addresses
/// that are about to be told anew.
void keep_correlations(Scenario& scenario, std::span<const std::string> told_anew);

/// Takes away those of numbers that are exact now, or gone.
void drop_impossible_correlations(Scenario& scenario);

}  // namespace windwall::scenario
