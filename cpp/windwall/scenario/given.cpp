#include "windwall/scenario/given.hpp"

#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/upgrade.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::Cursor;
using fields::ReadContext;

// A text, a flag or nothing, read exactly as from a file.
std::optional<Value> read_as_in_file(const FieldPath& path, fields::Json value,
                                     ReadContext& findings) {
    auto root = fields::Json::object();
    root[path.text()] = std::move(value);
    const auto document = fields::Document::made(std::move(root));
    return read_value(path, Cursor(document, findings)[path.text()]);
}

std::optional<double> read_si(const FieldPath& path, double number, const std::string& address,
                              ReadContext& findings) {
    const auto read = fields::read_si(number, path.row());
    if (read) {
        findings.notes.set(address, fields::note_of(*read));
        return number;
    }
    findings.problems.add(address, {}, read.violation);
    return std::nullopt;
}

// What a file would hold in its place.
fields::Json as_json(const FieldPath& path, const Given& given) {
    const Overloaded json{
        [](std::monostate) { return fields::Json(); },
        [](const auto& value) { return fields::Json(value); },
        [&](const std::vector<double>& list) {
            if (path.row().member.type != fields::FieldType::list) return fields::Json(list);
            auto texts = fields::Json::array();
            for (const double number : list)
                texts.push_back(fields::format(number, path.row().measure));
            return texts;
        },
    };
    return std::visit(json, given);
}

}  // namespace

std::optional<Value> read_given(const FieldPath& path, const Given& given, ReadContext& findings) {
    const auto* number = std::get_if<double>(&given);
    if (!number || !path.is_number()) return read_as_in_file(path, as_json(path, given), findings);
    if (const auto si = read_si(path, *number, path.text(), findings)) return *si;
    return std::nullopt;
}

}  // namespace windwall::scenario
