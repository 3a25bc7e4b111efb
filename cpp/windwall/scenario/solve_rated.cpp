#include "windwall/scenario/solve_rated.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/field_path.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/apply_anchor_sigma.hpp"
#include "windwall/scenario/complete.hpp"
#include "windwall/scenario/correlations.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

constexpr std::string_view anchor = "knock_anchor";
constexpr std::string_view rated_group = "rated";
// Of a best speed that nothing is said about.
constexpr double best_speed_known_to = 0.15;

engine::Cylinder& engine_of(Scenario& made) { return *made.vehicle.engine.as<engine::Cylinder>(); }

bool anything_given(const fields::Provenance& notes, std::string_view group) {
    const auto under = of_engine(group);
    return std::ranges::any_of(notes, [&](const auto& entry) {
        return fields::is_within(entry.first, under) && entry.first != under;
    });
}

double note_sigma(const fields::Provenance& notes, std::string_view key) {
    const auto* note = notes.find(of_engine("rated/" + std::string(key)));
    return note ? note->sigma.value_or(0) : 0;
}

/// What is known of an input before the rated figures; empty where it is stated.
std::optional<engine::FreeInput> free_input(Scenario& made, const fields::Provenance& notes,
                                            std::string_view address) {
    if (notes.given(of_engine(address))) return std::nullopt;
    auto& engine = engine_of(made);
    const auto path = fields::find_number(fields::group_type<engine::Cylinder>, &engine, address);
    const auto range = fields::range_in_si(path->row());
    engine::FreeInput input{address, {}, range.low, range.high};
    const auto value = path->get(&engine);
    if (!value) {
        const double usual = 0.7 * engine.rev_limit;
        input.known = {usual, best_speed_known_to * usual};
        return input;
    }
    input.known = {*value, sigma_of(made, of_engine(address), path->row())};
    return input.known.sigma > 0 ? std::optional(input) : std::nullopt;
}

/// The addresses of the anchor's values, from the vehicle.
std::vector<std::string> anchor_addresses() {
    std::vector<std::string> all;
    for (const auto& row : engine::KnockAnchor::rows())
        all.push_back(of_engine(std::string(anchor) + "/" + std::string(row.key)));
    return all;
}

void write_down(Scenario& scenario, const std::string& address, double sigma) {
    const auto path = find_input(scenario.vehicle, address);
    const auto value = path->get(&scenario.vehicle);
    if (!value) return;
    const auto& unit = fields::unit_of(path->row().measure);
    fields::Note note{.text = fields::shortest(*value, unit),
                      .bare = unit.text.empty() && sigma == 0,
                      .value = *value,
                      .sigma = {},
                      .unit = &unit,
                      .place = {}};
    if (sigma > 0) {
        note.sigma = sigma;
        note.text += " ± " + fields::shortest(sigma, unit, fields::Counted::difference);
    }
    if (!unit.text.empty()) note.text += " " + std::string(unit.text);
    scenario.notes.set(address, std::move(note));
}

/// The groups on the way to an address are given, too.
void open_group(Scenario& scenario, const std::string& address) {
    const auto group = address.substr(0, address.rfind('/'));
    if (!scenario.notes.given(group)) scenario.notes.set(group, {});
}

}  // namespace

void solve_rated(Scenario& made, const fields::Provenance& notes) {
    made.notes = notes;  // that sigmas are read from
    std::vector<engine::FreeInput> free;
    for (const auto address : engine::free_addresses())
        if (auto input = free_input(made, notes, address)) free.push_back(*input);
    auto& engine = engine_of(made);
    Rated solved{.fit = {}, .anchored = false};
    for (const auto& input : free)
        if (input.address == "breathing/best_speed")
            engine.breathing.best_speed = input.known.value;
    solved.fit = engine::fit_rated(engine, made.vehicle.fuel, std::move(free),
                                   note_sigma(notes, "torque"), note_sigma(notes, "power"));
    solved.anchored = engine.rated->research_octane && !anything_given(notes, anchor);
    if (solved.anchored) engine::anchor_by_rated_fuel(engine, made.vehicle.fuel);
    made.rated = std::make_shared<const Rated>(std::move(solved));
}

std::optional<double> solved_sigma(const Scenario& scenario, std::string_view address) {
    if (!scenario.rated) return std::nullopt;
    for (const auto& moved : scenario.rated->fit.inputs)
        if (of_engine(moved.input.address) == address) return moved.met.sigma;
    if (!scenario.rated->anchored || !fields::is_within(address, of_engine(anchor)))
        return std::nullopt;
    const auto& engine = *scenario.vehicle.engine.as<engine::Cylinder>();
    return address == knock_anchor ? engine.knock_anchor.spread() : 0;
}

bool is_solved(const Scenario& scenario, std::string_view address) {
    return solved_sigma(scenario, address).has_value();
}

void keep_solved(Scenario& scenario, std::span<const std::string> told_anew) {
    if (!scenario.rated) return;
    keep_correlations(scenario, told_anew);
    std::vector<std::string> addresses;
    for (const auto& moved : scenario.rated->fit.inputs)
        addresses.push_back(of_engine(moved.input.address));
    if (scenario.rated->anchored)
        for (auto& address : anchor_addresses())
            addresses.push_back(std::move(address));
    for (const auto& address : addresses) {
        open_group(scenario, address);
        write_down(scenario, address, solved_sigma(scenario, address).value_or(0));
    }
    scenario.rated.reset();
    engine_of(scenario).rated.reset();
    scenario.notes.erase(of_engine(rated_group));
}

}  // namespace windwall::scenario
