#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/fields/units.hpp"

#include <cmath>
#include <random>
#include <string>

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

/// Whether a row stands for numbers of its own, with a unit and a range.
inline bool is_number(const fields::Row& row) {
    return row.member.type == fields::FieldType::number ||
           row.member.type == fields::FieldType::optional_number ||
           row.member.type == fields::FieldType::list;
}

}  // namespace samples
