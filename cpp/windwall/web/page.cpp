#include "windwall/scenario/edit.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/web/answer_text.hpp"

#include <nlohmann/json.hpp>

#include <exception>
#include <string>

// What a page asks of the core: texts go in and come out, and nothing is thrown at a browser.
namespace windwall::web {
namespace {

using nlohmann::json;

scenario::Loaded of_page;  // the one scenario that a page is about
std::string said;          // the last answer, until the next one

std::string problems(const scenario::Loaded& loaded) {
    json all = json::array();
    for (const fields::Problem& one : loaded.problems.sorted())
        all.push_back({{"address", one.address}, {"message", one.message}});
    return json{{"problems", all}}.dump();
}

std::string problem(const std::string& message) {
    return json{{"problems", {{{"address", ""}, {"message", message}}}}}.dump();
}

scenario::Changes changes(const json& stated) {
    scenario::Changes made;
    for (const auto& [address, value] : stated.items()) {
        if (value.is_number()) {
            made.emplace_back(address, value.get<double>());
        } else {
            made.emplace_back(address, value.get<std::string>());
        }
    }
    return made;
}

std::string load(const char* text) {
    of_page = scenario::load(text, "page");
    return of_page ? "{}" : problems(of_page);
}

/// The top speed with some inputs moved, as they are typed in a file, or as numbers in SI.
std::string ask(const char* stated) {
    if (!of_page) return problem("no scenario is loaded");
    const scenario::Loaded moved = scenario::set(*of_page.scenario, changes(json::parse(stated)));
    if (!moved) return problems(moved);
    return answer_text(solve::answer_speed(moved.scenario->vehicle, moved.scenario->limits));
}

template <class Work>
const char* guarded(Work&& work, const char* text) {
    try {
        said = work(text);
    } catch (const std::exception& error) {
        said = problem(error.what());
    }
    return said.c_str();
}

}  // namespace
}  // namespace windwall::web

extern "C" {

const char* windwall_load(const char* text) {
    return windwall::web::guarded(windwall::web::load, text);
}

const char* windwall_ask(const char* stated) {
    return windwall::web::guarded(windwall::web::ask, stated);
}
}
