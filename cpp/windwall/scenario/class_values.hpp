#pragma once
#include "windwall/engine/class_priors.hpp"
#include "windwall/scenario/scenario.hpp"

#include <string>
#include <utility>
#include <vector>

namespace windwall::scenario {

/// What the design of the engine says of one of its values, whether it is stated or not.
struct ClassValue {
    std::string address;
    double value{};                  // SI, of the class
    double sigma{};                  // SI, of the class
    bool stated{};                   // then the class says nothing to the model
    std::vector<std::string> words;  // that have a part in it
    std::vector<std::pair<std::string, double>> narrowed;  // key of an unknown word, sigma
    std::vector<const engine::ClassPrior*> rows;
};

/// Every quantity that design chooses; none where nothing is described.
std::vector<ClassValue> class_values(const Scenario& scenario);

/// The words that a row of the table needs.
std::vector<std::string> words_of(const engine::Design& when);

}  // namespace windwall::scenario
