#pragma once
#include "windwall/fields/field_path.hpp"
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/drive/motion.hpp"
#include "windwall/solve/results/limit.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <span>
#include <vector>

namespace windwall::solve {

/// What a moment of a drive has beside an operating point's results.
struct DriveMoment {
    static constexpr std::string_view description = "A moment of a drive.";
    double time{};
    double distance{};
    double acceleration{};
    double pedal{};
    double position{};
    double clutch_heat{};
    double fuel_used{};
    double liquid_used{};
    double film{};

    static std::span<const fields::Row> rows();
};

/// What one thermal node has at a moment of a drive.
struct NodeMoment {
    static constexpr std::string_view description = "What takes time to warm up.";
    double temperature{};

    static std::span<const fields::Row> rows();
};

/// Keeps moments, column by column.
class Record {
public:
    explicit Record(std::vector<Limit> limits) : limits_(std::move(limits)) {}

    /// Reads an operating point, to be kept or to have its limits read.
    void look(const Mode& mode, const Moment& moment, std::span<const double> state,
              const Motion& motion, const vehicle::Balance& balance);
    const std::vector<Limit>& limits() const noexcept { return limits_; }
    /// Of what was looked at last, the result of a limit; NaN where it has none.
    double limited(std::size_t limit);
    /// Keeps what was looked at last.
    void keep(double time, const Mode& mode, const Moment& moment, std::span<const double> state,
              const Motion& motion);
    void hand_over(DriveResult& into);

private:
    void find_columns(const Motion& motion);

    OperatingPoint point_;
    bool runs_ = false;
    std::vector<Limit> limits_;
    std::vector<std::optional<fields::FieldPath>> limit_paths_;
    std::vector<fields::FieldPath> paths_;
    std::vector<std::string> addresses_;
    std::vector<std::vector<double>> columns_;
    std::vector<Phase> phase_;
    double distance_ = 0;  // m, of the moment that was kept last
};

}  // namespace windwall::solve
