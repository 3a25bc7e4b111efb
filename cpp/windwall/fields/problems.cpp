#include "windwall/fields/problems.hpp"

#include "windwall/fields/plain_text.hpp"

#include <algorithm>
#include <tuple>

namespace windwall::fields {

std::string joined(std::string_view outer, std::string_view inner) {
    if (outer.empty() || inner.empty()) return std::string(outer) + std::string(inner);
    return std::string(outer) + "/" + std::string(inner);
}

bool is_within(std::string_view address, std::string_view outer) {
    return address.starts_with(outer) &&
           (address.size() == outer.size() || address[outer.size()] == '/');
}

std::string to_text(const Problem& problem, std::string_view file) {
    auto text = printable(file, 200);
    if (problem.line > 0)
        text += ":" + std::to_string(problem.line) + ":" + std::to_string(problem.column);
    if (!problem.address.empty()) text += " " + problem.address;
    return text + ": " + problem.message;
}

void Problems::add(std::string_view address, Place place, std::string message) {
    ++total_;
    if (kept_.size() == most) return;
    kept_.push_back({printable(address, 200), place.line, place.column, std::move(message)});
}

std::vector<Problem> Problems::sorted() const {
    auto problems = kept_;
    std::ranges::stable_sort(problems, {}, [](const Problem& problem) {
        return std::tuple(problem.line, problem.column);
    });
    return problems;
}

std::string Problems::text(std::string_view file) const {
    std::string lines;
    for (const auto& problem : sorted())
        lines += to_text(problem, file) + "\n";
    if (total_ > kept_.size())
        lines += "and " + std::to_string(total_ - kept_.size()) + " more problems\n";
    return lines;
}

}  // namespace windwall::fields
