#pragma once
#include "windwall/scenario/scenario.hpp"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// The numbers of a scenario that are not known exactly, so that a study can draw them: those of
/// the vehicle and those that the upgrades bring, each under its own address, so that a draw of one
/// is the same in every set of upgrades.
namespace windwall::scenario {

struct Uncertain {
    std::string address;
    double value{};  // SI
    double sigma{};  // SI, above zero
    double low{};    // of the range it is cut at, SI; infinite where there is none
    double high{};
};

/// All numbers with a sigma, given or of a default: first the vehicle's in the order of its rows,
/// then upgrade by upgrade what it replaces, inserts, sets, lets choose, scales by and adds.
std::vector<Uncertain> uncertain_numbers(const Scenario& scenario);

/// One scenario whose uncertain numbers are given again and again, in their order. The workspace of
/// one thread; what it hands out is good until the next values come.
class Drawn {
public:
    explicit Drawn(const Scenario& scenario);

    std::size_t size() const noexcept { return numbers_.size(); }
    /// Throws std::logic_error unless there is a value for each.
    const Scenario& at(std::span<const double> values);
    /// A rule of the vehicle that the values break. What the upgrades no longer allow shows when a
    /// set is installed.
    std::optional<std::string> broken_rule() const;

private:
    std::unique_ptr<Scenario> scenario_;  // stays where it is, since numbers are pointed at
    std::vector<double*> numbers_;
    std::vector<FieldPath> paths_;  // of those that are the vehicle's
};

/// The same scenario with other values for these numbers, in their order.
Scenario with_numbers(const Scenario& scenario, std::span<const double> values);

}  // namespace windwall::scenario
