#pragma once
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/row.hpp"

#include <map>
#include <optional>
#include <string>
#include <variant>

namespace windwall::bindings {

using Stated = std::variant<double, std::string>;  // SI, or a text with its unit

inline double read(const Stated& stated, const fields::Row& row) {
    const auto* text = std::get_if<std::string>(&stated);
    const auto read =
        text ? fields::read_quantity(*text, row) : fields::read_si(std::get<double>(stated), row);
    if (!read) throw WrongInput(row.key, read.violation);
    return read->value;
}

/// What is stated of a question, by its rows; the rest stays as it is made.
template <class Question>
Question question(const std::map<std::string, Stated>& stated) {
    Question made;
    for (const fields::Row& row : Question::rows()) {
        const auto found = stated.find(std::string(row.key));
        if (found == stated.end()) continue;
        void* member = row.member.of(&made);
        if (row.member.type == fields::FieldType::optional_number)
            *static_cast<std::optional<double>*>(member) = read(found->second, row);
        else
            *static_cast<double*>(member) = read(found->second, row);
    }
    return made;
}

}  // namespace windwall::bindings
