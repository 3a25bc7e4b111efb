#include "windwall/engine/class_priors.hpp"

#include "windwall/engine/cylinder.hpp"
#include "windwall/fields/exact.hpp"
#include "windwall/fields/field_path.hpp"
#include "windwall/fields/quantity.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

bool is_about(const ClassPrior& prior, const ClassQuantity& quantity) {
    return prior.address == quantity.address;
}

/// One class: every word that counts is known.
Estimate of_class(const ClassQuantity& quantity, const Design& design) {
    double value = 0, variance = 0;
    for (const ClassPrior& prior : class_priors()) {
        if (!is_about(prior, quantity) || !design.has(prior.when)) continue;
        value += prior.value;
        variance += prior.sigma * prior.sigma;
    }
    return {value, std::sqrt(variance)};
}

template <class Visit>
void each_class(const ClassQuantity& quantity, const Design& design, std::size_t from,
                Visit&& visit) {
    for (std::size_t which = from; which < Design::words; ++which) {
        if (design.numbers()[which] != 0 || !counts(quantity, which)) continue;
        for (std::size_t word = 1; word < word_counts()[which]; ++word)
            each_class(quantity, design.with(which, word), which + 1, visit);
        return;
    }
    visit(of_class(quantity, design));
}

}  // namespace

const fields::FieldPath& path_to(const ClassQuantity& quantity) {
    static const std::vector<fields::FieldPath> paths = [] {
        static const Cylinder example{};
        std::vector<fields::FieldPath> made;
        for (const ClassQuantity& one : class_quantities())
            made.push_back(
                *fields::find_number(fields::group_type<Cylinder>, &example, one.address));
        return made;
    }();
    return paths[static_cast<std::size_t>(&quantity - class_quantities().data())];
}

bool counts(const ClassQuantity& quantity, std::size_t which) {
    return std::ranges::any_of(class_priors(), [&](const ClassPrior& prior) {
        return is_about(prior, quantity) && prior.when.numbers()[which] != 0;
    });
}

Estimate estimate(const ClassQuantity& quantity, const Design& design) {
    double count = 0, sum = 0, squares = 0, variance = 0;
    each_class(quantity, design, 0, [&](const Estimate& one) {
        ++count;
        sum += one.value;
        squares += one.value * one.value;
        variance += one.sigma * one.sigma;
    });
    const double mean = sum / count;
    const double between = std::max(0.0, squares / count - mean * mean);
    return {mean, std::sqrt(variance / count + between)};
}

Estimate estimate(const ClassQuantity& quantity, const Cylinder& engine, const Design& design) {
    const Estimate made = estimate(quantity, design);
    const auto& unit = fields::unit_of(quantity.measure);
    const double per = quantity.per ? quantity.per(engine) : 1;
    const fields::Row& row = path_to(quantity).row();
    const fields::Range range = fields::range_in_si(row);
    const double value = fields::to_si(made.value, unit) * per;
    const double sigma = fields::to_si(made.sigma, unit, fields::Counted::difference) * per;
    // What is counted is one thing or another, and never something in between.
    if (row.whole) return {std::round(value), 0};
    return {std::clamp(value, range.low, range.high), sigma};
}

std::optional<double> narrowed(const ClassQuantity& quantity, const Design& design,
                               std::size_t which) {
    if (design.numbers()[which] != 0 || !counts(quantity, which)) return std::nullopt;
    double variance = 0;
    const std::size_t known = word_counts()[which] - 1;
    for (std::size_t word = 1; word <= known; ++word)
        variance += std::pow(estimate(quantity, design.with(which, word)).sigma, 2);
    return std::sqrt(variance / static_cast<double>(known));
}

std::vector<const ClassPrior*> drawn_on(const ClassQuantity& quantity, const Design& design) {
    std::vector<const ClassPrior*> rows;
    for (const ClassPrior& prior : class_priors()) {
        if (!is_about(prior, quantity)) continue;
        // A row of a word that is unknown may apply.
        const auto mine = design.numbers(), needed = prior.when.numbers();
        bool may = true;
        for (std::size_t which = 0; which < Design::words; ++which)
            may = may && (needed[which] == 0 || mine[which] == 0 || mine[which] == needed[which]);
        if (may) rows.push_back(&prior);
    }
    return rows;
}

}  // namespace windwall::engine
