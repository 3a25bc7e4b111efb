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
                const std::vector<std::string>& ids, const RelationComplaint& complain) {
    UpgradeSet set = 0;
    for (std::size_t entry = 0; entry < ids.size(); ++entry) {
        const auto other = find(menu, ids[entry]);
        if (!other)
            complain(at, key, entry, unknown(menu, ids[entry]));
        else if (*other == at)
            complain(at, key, entry, "an upgrade neither needs nor bars itself");
        else
            set |= only(*other);
    }
    return set;
}

void close_needs(Menu& menu) {
    for (bool grown = true; grown;) {
        grown = false;
        for (std::size_t at = 0; at < menu.size(); ++at) {
            auto required = menu[at].required;
            for (std::size_t other = 0; other < menu.size(); ++other)
                if (holds(required, other)) required |= menu[other].required;
            required &= ~only(at);
            grown = grown || required != menu[at].required;
            menu[at].required = required;
        }
    }
}

void make_bars_symmetric(Menu& menu) {
    for (std::size_t at = 0; at < menu.size(); ++at)
        for (std::size_t other = 0; other < menu.size(); ++other)
            if (holds(menu[at].excluded, other)) menu[other].excluded |= only(at);
}

std::string quoted(const Upgrade& upgrade) { return "\"" + upgrade.id + "\""; }

}  // namespace

void relate(Menu& menu, const RelationComplaint& complain) {
    for (std::size_t at = 0; at < menu.size(); ++at) {
        auto& upgrade = menu[at];
        upgrade.required = read(menu, at, "requires", upgrade.required_ids, complain);
        upgrade.excluded = read(menu, at, "excludes", upgrade.excluded_ids, complain);
    }
    close_needs(menu);
    make_bars_symmetric(menu);
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
