#pragma once
#include "windwall/fields/exact.hpp"
#include "windwall/fields/example.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/scenario/load.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <string>
#include <vector>

/// Vehicles made from the rows alone: every kind of part in any order, every number anywhere in its
/// range. What the reader complains of is made again until it complains no more.
namespace random_vehicles {

using namespace windwall::fields;

class Maker {
public:
    explicit Maker(unsigned seed) : random_(seed) {}

    /// The text of a scenario that loads; nothing where the rules across values were not met in
    /// time.
    std::optional<Json> next() {
        Json root{{"format", "windwall-scenario/2"}};
        const GroupType& vehicle = group_type<windwall::vehicle::Vehicle>;
        for (const Row& row : vehicle.rows())
            root[std::string(row.key)] = value(row);
        for (int i = 0; i < most_repairs; ++i) {
            const auto problems = windwall::scenario::load(root.dump()).problems.sorted();
            if (problems.empty()) return root;
            for (const Problem& problem : problems)
                repair(root, vehicle, problem.address);
        }
        return std::nullopt;
    }

private:
    static constexpr int most_repairs = 60;
    static constexpr std::size_t most_parts = 6, most_entries = 8;

    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    std::size_t any(std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(random_);
    }
    bool chance(double share) { return between(0, 1) < share; }

    /// By decades where the range has several; whole numbers where only they make sense.
    double inside(const Range& range) {
        // Half of them from the middle half of the range, where more vehicles move.
        const double margin = chance(0.5) ? 0.25 : 0;
        const double share = between(margin, 1 - margin);
        const bool decades = range.low > 0 && range.high > 20 * range.low;
        const double drawn = decades ? range.low * std::pow(range.high / range.low, share)
                                     : std::lerp(range.low, range.high, share);
        return std::clamp(std::stod(shortest(std::round(drawn * 1e4) / 1e4)), range.low,
                          range.high);
    }
    double inside(const Row& row) {
        const double drawn = inside(row.range);
        if (!row.whole) return drawn;
        return std::clamp(std::round(drawn), std::ceil(row.range.low), std::floor(row.range.high));
    }
    static Json stated(double number, const Row& row) {
        if (row.measure.unit.empty()) return number;
        return shortest(number) + " " + std::string(row.measure.unit);
    }

    Json list(const Row& row) {
        const std::size_t most = std::min(row.count.most, most_entries);
        std::vector<double> numbers(row.count.least + any(most - row.count.least + 1));
        for (double& number : numbers)
            number = inside(row.range);
        std::ranges::sort(numbers, std::greater());
        Json made = Json::array();
        for (double number : numbers)
            made.push_back(stated(number, row));
        return made;
    }

    Json table(const Row& row) {
        Json units = Json::object(), rows = Json::array();
        const std::size_t count = 2 + any(most_entries - 1);
        std::vector<std::vector<double>> columns;
        for (const Column& column : row.columns) {
            units[std::string(column.key)] = column.measure.unit;
            auto& numbers = columns.emplace_back(count);
            for (double& number : numbers)
                number = inside(column.range);
        }
        std::ranges::sort(columns.front());
        for (std::size_t i = 0; i < count; ++i) {
            Json cells = Json::array();
            for (const auto& column : columns)
                cells.push_back(column[i]);
            rows.push_back(cells);
        }
        return {{"columns", units}, {"rows", rows}};
    }

    Json tagged(const TaggedType& type, std::size_t kind, const std::string& id = {}) {
        Json made = Json::object();
        if (!id.empty()) made["id"] = id;
        made["kind"] = type.kinds[kind];
        made.update(group(*type.types[kind]));
        return made;
    }

    Json parts(const Row& row) {
        const TaggedType& type = *row.member.parts->tagged;
        Json made = Json::array();
        for (std::size_t i = 0, count = 1 + any(most_parts); i < count; ++i)
            made.push_back(tagged(type, any(type.kinds.size()),
                                  std::string(row.key) + "_" + std::to_string(i)));
        return made;
    }

    Json group(const GroupType& type) {
        Json made = Json::object();
        for (const Row& row : type.rows())
            if (must_be_stated(row) || (row.member.type != FieldType::text && chance(0.25)))
                made[std::string(row.key)] = value(row);
        return made;
    }

    Json value(const Row& row) {
        const Member& member = row.member;
        switch (member.type) {
            case FieldType::number:
            case FieldType::optional_number: return stated(inside(row), row);
            case FieldType::flag: return chance(0.5);
            case FieldType::text: return "A text.";
            case FieldType::choice: return member.choice->names[any(member.choice->names.size())];
            case FieldType::list: return list(row);
            case FieldType::table: return table(row);
            case FieldType::group:
            case FieldType::optional_group: return group(*member.group);
            case FieldType::tagged: return tagged(*member.tagged, any(member.tagged->kinds.size()));
            case FieldType::parts: return parts(row);
        }
        return nullptr;
    }

    /// Makes again what an address lies in: a part of a list, of whatever kind, or all that stands
    /// under a key of the root.
    void repair(Json& root, const GroupType& vehicle, const std::string& address) {
        const std::string key = address.substr(0, address.find('/'));
        for (const Row& row : vehicle.rows()) {
            if (row.key != key) continue;
            if (row.member.type == FieldType::parts && address.size() > key.size())
                repair_part(root[key], row, address.substr(key.size() + 1));
            else
                root[key] = value(row);
        }
    }

    void repair_part(Json& list, const Row& row, const std::string& address) {
        const TaggedType& type = *row.member.parts->tagged;
        for (Json& entry : list) {
            const auto id = entry["id"].get<std::string>();
            if (address.substr(0, address.find('/')) != id) continue;
            entry = tagged(type, any(type.kinds.size()), id);
        }
    }

    std::mt19937 random_;
};

}  // namespace random_vehicles
