#pragma once
#include "windwall/engine/fit_rated.hpp"
#include "windwall/fields/provenance.hpp"
#include "windwall/scenario/correlations.hpp"
#include "windwall/scenario/header.hpp"
#include "windwall/scenario/observation.hpp"
#include "windwall/scenario/upgrade.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/vehicle/outing/outing.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <memory>
#include <string>
#include <vector>

namespace windwall::scenario {

/// What the rated figures of the stock engine settled.
struct Rated {
    engine::RatedFit fit;
    bool anchored{};  // knock, by the fuel that the maker asks for
};

/// One scenario file, understood: one vehicle on one day with one goal, and the menu of what could
/// be done to it. A value; what changes it makes another one.
struct Scenario {
    std::string schema;  // that editors go by; never fetched
    Header header;
    vehicle::Vehicle vehicle;
    Menu menu;
    std::string currency;                   // of every cost and the budget; empty without any
    std::vector<solve::Limit> limits;       // as stated; the built-in ones are not among them
    std::vector<Correlation> correlations;  // as stated
    std::vector<Observation> observed;
    std::vector<vehicle::Outing> outings;
    std::shared_ptr<const Rated> rated;  // null where none are stated
    fields::Provenance notes;  // of every address in the file: as typed, its sigma, its place

    std::shared_ptr<const fields::Json> limits_source;  // as typed, to be saved
    std::shared_ptr<const fields::Json> correlations_source;
    std::shared_ptr<const fields::Json> observed_source;
    std::shared_ptr<const fields::Json> outings_source;
};

}  // namespace windwall::scenario
