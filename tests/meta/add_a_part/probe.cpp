/// Asks the core, and nothing that knows a kind of part, about the scenario it is given:
/// everything as one JSON document.
#include "windwall/fields/member.hpp"
#include "windwall/fields/reference.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/scenario/save.hpp"
#include "windwall/scenario/schema.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/answer/limits.hpp"

#include <nlohmann/json.hpp>

#include <fstream>
#include <iostream>
#include <iterator>

int main(int, char** arguments) {
    using namespace windwall;
    std::ifstream file(arguments[1]);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    const auto loaded = scenario::load(text);
    nlohmann::json told{
        {"problems", loaded.violation()},
        {"schema", scenario::schema()},
        {"page", fields::reference_page(fields::group_type<vehicle::Vehicle>, "Keys")}};
    if (loaded) {
        const auto& scenario = *loaded.scenario;
        told["saved"] = scenario::save(scenario);
        for (const auto& limit : solve::built_in_limits(scenario.vehicle))
            told["limits"][limit.address] = {{"max", limit.max.value_or(0)}, {"why", limit.why}};
        told["unrated"] = solve::unrated(scenario.vehicle);
        const auto answer = solve::answer_speed(scenario.vehicle, scenario.limits);
        told["speed"] = answer.speed.value_or(0.0);
        for (const auto& passed : answer.passed)
            told["passed"][passed.address] = passed.worst;
    }
    std::cout << told.dump();
}
