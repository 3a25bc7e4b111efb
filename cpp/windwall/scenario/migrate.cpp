#include "windwall/scenario/migrate.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {

std::span<const Migration> migrations() { return {}; }

std::optional<fields::Json> migrate(fields::Json root, std::span<const Migration> steps,
                                    std::string_view target) {
    for (const auto& step : steps) {
        if (root["format"] != step.from) continue;
        step.change(root);
        root["format"] = step.to;
    }
    if (root["format"] != target) return std::nullopt;
    return root;
}

}  // namespace windwall::scenario
