#pragma once
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/problems.hpp"

#include <exception>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::bindings {

/// Input that is wrong; reaches Python as windwall.ScenarioError with all its problems.
class WrongInput : public std::exception {
public:
    WrongInput(std::vector<fields::Problem> problems, std::string source)
        : problems_(std::move(problems)), source_(std::move(source)) {}
    /// One thing that is wrong with what was said at an address.
    WrongInput(std::string_view address, std::string message)
        : problems_{{fields::printable(address, 200), 0, 0, std::move(message)}} {}

    const char* what() const noexcept override { return "wrong input"; }
    const std::vector<fields::Problem>& problems() const noexcept { return problems_; }
    const std::string& source() const noexcept { return source_; }

private:
    std::vector<fields::Problem> problems_;
    std::string source_;
};

}  // namespace windwall::bindings
