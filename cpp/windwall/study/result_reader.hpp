#pragma once
#include "windwall/fields/field_path.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <optional>
#include <string>
#include <vector>

namespace windwall::study {

/// Reads results off one operating point after the other. Where each stands is worked out at the
/// first point that has it, since variants and worlds differ in numbers only. The workspace of one
/// thread.
class ResultReader {
public:
    explicit ResultReader(std::vector<std::string> addresses);

    std::size_t size() const noexcept { return addresses_.size(); }
    /// SI; NaN where the point has no such number.
    double read(std::size_t which, const solve::OperatingPoint& point);

private:
    std::vector<std::string> addresses_;
    std::vector<std::optional<fields::FieldPath>> paths_;
};

}  // namespace windwall::study
