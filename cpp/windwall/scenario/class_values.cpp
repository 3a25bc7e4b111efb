#include "windwall/scenario/class_values.hpp"

#include "windwall/engine/cylinder.hpp"
#include "windwall/scenario/complete.hpp"
#include "windwall/scenario/solve_rated.hpp"

namespace windwall::scenario {
namespace {

using engine::Design;

std::string_view key_of(std::size_t which) { return Design::rows()[which].key; }

std::string word(std::size_t which, std::size_t number) {
    return std::string(Design::rows()[which].member.choice->names[number]);
}

ClassValue class_value(const engine::ClassQuantity& quantity, const engine::Cylinder& engine,
                       const Design& design, const fields::Provenance& notes) {
    const auto here = engine::estimate(quantity, engine, design);
    const double in_class = engine::estimate(quantity, design).sigma;
    ClassValue made{of_engine(quantity.address),       here.value, here.sigma, false, {}, {},
                    engine::drawn_on(quantity, design)};
    made.stated = notes.given(made.address);
    for (std::size_t which = 0; which < Design::words; ++which) {
        const auto number = design.numbers()[which];
        if (number != 0 && engine::counts(quantity, which))
            made.words.push_back(word(which, number));
        const auto known = engine::narrowed(quantity, design, which);
        if (known && in_class > 0)
            made.narrowed.emplace_back(key_of(which), here.sigma * *known / in_class);
    }
    return made;
}

}  // namespace

std::vector<ClassValue> class_values(const Scenario& scenario) {
    std::vector<ClassValue> all;
    const auto design = design_of(scenario.vehicle, scenario.notes);
    if (!design.known()) return all;
    const auto& engine = *scenario.vehicle.engine.as<engine::Cylinder>();
    for (const auto& quantity : engine::class_quantities())
        all.push_back(class_value(quantity, engine, design, scenario.notes));
    return all;
}

std::vector<std::string> words_of(const Design& when) {
    std::vector<std::string> words;
    for (std::size_t which = 0; which < Design::words; ++which)
        if (const auto number = when.numbers()[which]; number != 0)
            words.push_back(word(which, number));
    return words;
}

}  // namespace windwall::scenario
