#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What Python is told of a scenario, by rows like every answer.
namespace windwall::bindings {

/// What a file says about itself.
struct HeadingEntry {
    static constexpr std::string_view description = "What a file says about itself.";
    std::string title;
    std::string notes;
    std::string units;  // the system
    std::string currency;

    static std::span<const fields::Row> rows();
};

struct MenuEntry {
    static constexpr std::string_view description = "One upgrade of the menu.";
    std::string id;
    std::string title;
    std::optional<double> cost;        // in the currency of the file
    std::optional<double> cost_sigma;  // in that
    std::optional<double> hours;       // h
    std::vector<std::string> required;
    std::vector<std::string> excluded;

    static std::span<const fields::Row> rows();
};

struct LimitEntry {
    static constexpr std::string_view description = "A bound on a result, stated or built in. SI.";
    std::string address;
    std::optional<double> max;
    std::optional<double> min;
    std::string why;

    static std::span<const fields::Row> rows();
};

/// What one more word of a design would tell of a value.
struct NarrowingEntry {
    static constexpr std::string_view description = "What one more word of a design would tell.";
    std::string word;  // its key
    double sigma{};

    static std::span<const fields::Row> rows();
};

struct ClassValueEntry {
    static constexpr std::string_view description =
        "What the design of an engine says of one of its values. SI.";
    std::string address;
    double value{};
    double sigma{};
    bool stated = false;
    std::vector<std::string> words;
    std::vector<NarrowingEntry> narrowed;
    std::vector<std::string> sources;

    static std::span<const fields::Row> rows();
};

struct ClassPriorEntry {
    static constexpr std::string_view description =
        "One row of what engines of one design share, in the unit in which it is stated.";
    std::string address;
    std::vector<std::string> words;
    double value{};
    double sigma{};
    std::string source;

    static std::span<const fields::Row> rows();
};

struct RatedFigureEntry {
    static constexpr std::string_view description =
        "A figure that a maker printed, and what the stock engine gives beside it. SI.";
    std::string key;
    double rated{};
    double sigma{};
    double before{};
    double met{};
    bool unreconciled = false;

    static std::span<const fields::Row> rows();
};

struct MovedInputEntry {
    static constexpr std::string_view description =
        "An input that was moved so that the rated figures are met. SI.";
    std::string address;
    double known{};
    double known_sigma{};
    double value{};
    double sigma{};
    double sigmas{};

    static std::span<const fields::Row> rows();
};

struct RatedFitEntry {
    static constexpr std::string_view description = "How the stock engine meets its rated figures.";
    std::vector<RatedFigureEntry> figures;
    std::vector<MovedInputEntry> inputs;
    bool anchored = false;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::bindings
