#pragma once
#include "windwall/engine/design.hpp"
#include "windwall/fields/measure.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace windwall::fields {
class FieldPath;
}

namespace windwall::engine {

struct Cylinder;

/// What engines of one design have in common, as far as one row tells. A quantity is the sum of its
/// rows that apply: the first kind gives its level, the others what a word changes.
struct ClassPrior {
    std::string_view address;  // of the quantity, from the engine
    Design when;               // the words it needs
    double value{};            // in the measure of its quantity
    double sigma{};            // spread of engines that share these words
    std::string_view source;
};

/// A quantity that design chooses where it is not stated.
struct ClassQuantity {
    std::string_view address;
    fields::Measure measure;  // in which its priors are stated
    /// What stands at the address, SI, for 1 of what the priors state, SI.
    double (*per)(const Cylinder& engine) = nullptr;
};

/// Every prior: one table, nothing of it for one engine.
std::span<const ClassPrior> class_priors();
std::span<const ClassQuantity> class_quantities();

/// Where one of these quantities stands in an engine.
const fields::FieldPath& path_to(const ClassQuantity& quantity);

/// A value and one standard deviation, SI.
struct Estimate {
    double value{};
    double sigma{};
};

/// What a design tells of a quantity, in the measure of its priors: the mixture of all classes that
/// it leaves open, each as likely as the next. Sigma holds the spread in a class and between them.
Estimate estimate(const ClassQuantity& quantity, const Design& design);

/// A quantity of one engine as its design has it, within the range of its row.
Estimate estimate(const ClassQuantity& quantity, const Cylinder& engine, const Design& design);

/// Its sigma were one more word known, counted from 0 in the order of the rows, over all that it
/// could be; empty where the word is known or has no part in it.
std::optional<double> narrowed(const ClassQuantity& quantity, const Design& design,
                               std::size_t which);

/// Whether a word, counted from 0 in the order of the rows, has a part in a quantity.
bool counts(const ClassQuantity& quantity, std::size_t which);

/// The rows that a design draws on, in the order of the table.
std::vector<const ClassPrior*> drawn_on(const ClassQuantity& quantity, const Design& design);

}  // namespace windwall::engine
