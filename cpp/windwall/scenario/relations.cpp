#include "windwall/scenario/relations.hpp"

#include "windwall/fields/nearest.hpp"
#include "windwall/fields/plain_text.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

std::optional<std::size_t> find(const Menu& menu, std::string_view id) {
    const auto found = std::ranges::find(menu, id, &Upgrade::id);
    if (id.empty() || found == menu.end()) return std::nullopt;
    return static_cast<std::size_t>(found - menu.begin());
}

std::string unknown(const Menu& menu, std::string_view id) {
    std::vector<std::string_view> ids;
    for (const auto& upgrade : menu)
        ids.push_back(upgrade.id);
    const auto near = fields::nearest(id, ids);
    return "there is no upgrade " + fields::in_quotes(id) +
           (near.empty() ? "" : "; did you mean \"" + std::string(near) + "\"?");
}

UpgradeSet read(const Menu& menu, std::size_t at, std::string_view key,
                const std::vector<std::string>& ids, std::vector<UnknownRelation>& wrong) {
    UpgradeSet set = 0;
    for (std::size_t entry = 0; entry < ids.size(); ++entry) {
        const auto other = find(menu, ids[entry]);
        if (!other)
            wrong.push_back({at, key, entry, unknown(menu, ids[entry])});
        else if (*other == at)
            wrong.push_back({at, key, entry, "an upgrade neither needs nor bars itself"});
        else
            set |= only(*other);
    }
    return set;
}

std::string quoted(const Upgrade& upgrade) { return "\"" + upgrade.id + "\""; }

}  // namespace

Relations closed(Relations stated) {
    const auto n = stated.size();
    for (std::size_t through = 0; through < n; ++through)
        for (auto& required : stated.required)
            if (holds(required, through)) required |= stated.required[through];
    for (std::size_t at = 0; at < n; ++at)
        stated.required[at] &= ~only(at);
    for (std::size_t one = 0; one < n; ++one)
        for (std::size_t other = 0; other < n; ++other)
            if (holds(stated.excluded[one], other)) stated.excluded[other] |= only(one);
    return stated;
}

std::vector<UnknownRelation> relate(Menu& menu) {
    std::vector<UnknownRelation> wrong;
    Relations stated;
    for (std::size_t at = 0; at < menu.size(); ++at) {
        stated.required.push_back(read(menu, at, "requires", menu[at].required_ids, wrong));
        stated.excluded.push_back(read(menu, at, "excludes", menu[at].excluded_ids, wrong));
    }
    const auto relations = closed(std::move(stated));
    for (std::size_t at = 0; at < menu.size(); ++at) {
        menu[at].required = relations.required[at];
        menu[at].excluded = relations.excluded[at];
    }
    return wrong;
}

std::string refusal(const Menu& menu, UpgradeSet set) {
    for (std::size_t at = 0; at < menu.size(); ++at) {
        if (!holds(set, at)) continue;
        for (std::size_t other = 0; other < menu.size(); ++other) {
            if (holds(menu[at].required, other) && !holds(set, other))
                return quoted(menu[at]) + " requires " + quoted(menu[other]);
            if (holds(menu[at].excluded, other) && holds(set, other))
                return quoted(menu[at]) + " and " + quoted(menu[other]) + " exclude each other";
        }
    }
    return {};
}

}  // namespace windwall::scenario
