#pragma once
#include "windwall/fields/field_path.hpp"
#include "windwall/solve/point/outcome.hpp"
#include "windwall/study/batch.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::study {

/// Variants of one vehicle: what each column sets, and its value in every variant, SI.
struct Variants {
    std::vector<fields::FieldPath> inputs;
    std::vector<std::vector<double>> values;  // by input, then by variant

    std::size_t size() const { return values.empty() ? 0 : values.front().size(); }
};

/// What each variant answers. A missing number is NaN and the status says why.
struct AnswerColumns {
    static constexpr std::string_view description = "What each variant of a sweep answers.";
    std::vector<solve::Status> status;
    std::vector<double> speed;                 // m/s, at the end of the road where one is named
    std::vector<double> balance_speed;         // m/s
    std::vector<double> gear;                  // from 1, at the equilibrium
    std::vector<std::vector<double>> outputs;  // by result, then by variant; at the equilibrium

    static std::span<const fields::Row> rows();  // of the speeds and the gear
};

/// Top speed of every variant on all cores. Each starts from its own cold guess, so that neither
/// the order nor the threads can change a bit of any answer; those not reached when the caller
/// stops it are `cancelled`. `outputs` are result addresses.
AnswerColumns solve_columns(const vehicle::Vehicle& vehicle, const Variants& variants,
                            const std::vector<std::string>& outputs = {},
                            const BatchOptions& options = {});

}  // namespace windwall::study
