#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/fields/units.hpp"

#include <cmath>
#include <optional>
#include <random>
#include <string>
#include <vector>

/// Random numbers for tests; the same every time a test runs.
namespace samples {

using namespace windwall;

class Dice {
public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * std::uniform_real_distribution<double>()(engine_);
    }
    double decades(double low, double high) {
        return std::exp(between(std::log(low), std::log(high)));
    }

private:
    std::mt19937_64 engine_;
};

inline double si(double number, const fields::Unit& unit) {
    return (number + std::stod(std::string(unit.shift))) * std::stod(std::string(unit.factor)) /
           std::stod(std::string(unit.divisor));
}

/// Every number drawn from inside its row's range, those that may be left out as often as `stated`
/// says; lists fall from first to last. A struct that breaks its own rule is drawn again.
template <class T>
T drawn(Dice& dice, double stated) {
    for (;;) {
        T made;
        for (const fields::Row& row : T::rows()) {
            const auto [low, high] = row.range;
            void* member = row.member.of(&made);
            const auto number = [&] {
                return si(dice.between(low, high), fields::unit_of(row.measure));
            };
            if (row.member.type == fields::FieldType::number)
                *static_cast<double*>(member) = number();
            if (row.member.type == fields::FieldType::optional_number && stated > 0 &&
                dice.between(0, 1) < stated)
                *static_cast<std::optional<double>*>(member) = number();
            if (row.member.type == fields::FieldType::list) {
                auto& numbers = *static_cast<std::vector<double>*>(member);
                for (double top = high; top > 1.3 * low; top *= 0.7)
                    numbers.push_back(si(top, fields::unit_of(row.measure)));
            }
        }
        if constexpr (requires { made.check(); }) {
            if (made.check()) continue;
        }
        return made;
    }
}

/// Whether a row stands for numbers of its own, with a unit and a range.
inline bool is_number(const fields::Row& row) {
    return row.member.type == fields::FieldType::number ||
           row.member.type == fields::FieldType::optional_number ||
           row.member.type == fields::FieldType::list;
}

}  // namespace samples
