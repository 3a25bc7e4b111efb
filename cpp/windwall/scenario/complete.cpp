#include "windwall/scenario/complete.hpp"

#include "windwall/engine/select_priors.hpp"
#include "windwall/scenario/apply_anchor_sigma.hpp"
#include "windwall/scenario/solve_rated.hpp"

#include <algorithm>
#include <utility>

namespace windwall::scenario {
namespace {

bool has_carburettor(const vehicle::Vehicle& vehicle) {
    return std::ranges::any_of(vehicle.charge_path, [](const auto& entry) {
        return entry.part.template as<charge::Carburettor>() != nullptr;
    });
}

engine::Stated stated_in(const fields::Provenance& notes) {
    return [&notes](std::string_view address) { return notes.given(of_engine(address)); };
}

}  // namespace

void complete(Scenario& made, const fields::Provenance& notes) {
    made.rated.reset();
    apply_anchor_sigma(made.vehicle, notes);
    auto* engine = made.vehicle.engine.as<engine::Cylinder>();
    if (engine == nullptr) return;
    engine::select_priors(*engine, has_carburettor(made.vehicle), stated_in(notes));
    if (engine->rated) solve_rated(made, notes);
}

void complete_installed(const Scenario& scenario, vehicle::Vehicle& after, UpgradeSet set) {
    const auto* was = scenario.vehicle.engine.as<engine::Cylinder>();
    auto* is = after.engine.as<engine::Cylinder>();
    if (was == nullptr || is == nullptr) return;
    const auto stated = [&](std::string_view address) {
        const auto whole = of_engine(address);
        return scenario.notes.given(whole) || changes_value(scenario.menu, set, whole) ||
               is_solved(scenario, whole);
    };
    engine::move_priors(*was, has_carburettor(scenario.vehicle), *is, has_carburettor(after),
                        stated);
}

vehicle::Vehicle as_stated(const Scenario& scenario) {
    auto vehicle = scenario.vehicle;
    auto* engine = vehicle.engine.as<engine::Cylinder>();
    if (engine == nullptr) return vehicle;
    const auto design = std::exchange(engine->design, {});  // the usual values of no design
    engine::select_priors(*engine, has_carburettor(vehicle), stated_in(scenario.notes));
    engine->design = design;
    if (scenario.rated && scenario.rated->anchored) engine->knock_anchor = {};
    return vehicle;
}

engine::Design design_of(const vehicle::Vehicle& vehicle, const fields::Provenance& notes) {
    const auto* engine = vehicle.engine.as<engine::Cylinder>();
    if (engine == nullptr) return {};
    return engine::known_design(*engine, has_carburettor(vehicle), stated_in(notes));
}

double sigma_of(const Scenario& scenario, std::string_view address, const fields::Row& row) {
    const auto* note = scenario.notes.find(address);
    if (note || !address.starts_with(of_engine(""))) return fields::sigma_of(row, note);
    if (const auto sigma = solved_sigma(scenario, address)) return *sigma;
    const auto design = design_of(scenario.vehicle, scenario.notes);
    if (!design.known()) return fields::sigma_of(row, note);
    for (const auto& quantity : engine::class_quantities())
        if (of_engine(quantity.address) == address)
            return engine::estimate(quantity, *scenario.vehicle.engine.as<engine::Cylinder>(),
                                    design)
                .sigma;
    return fields::sigma_of(row, note);
}

}  // namespace windwall::scenario
