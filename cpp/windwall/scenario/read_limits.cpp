#include "windwall/scenario/read_limits.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/scenario/result_address.hpp"
#include "windwall/scenario/value.hpp"

namespace windwall::scenario {
namespace {

constexpr std::size_t most_limits = 64;

struct Reason {
    static constexpr std::string_view description = "What happens beyond a limit.";
    std::string why;
    static std::span<const fields::Row> rows() {
        static constexpr fields::Row table[] = {
            fields::text("why", fields::at<&Reason::why>, "What happens beyond the limit",
                         fields::Need::required),
        };
        return table;
    }
};

// An input is refused by name; what cannot be found because of a problem is passed over.
void complain_about(const fields::Cursor& limit, std::string_view address,
                    const vehicle::Vehicle& vehicle, const InvalidAddresses& invalid) {
    if (find_input(vehicle, address))
        limit.complain(fields::in_quotes(address) +
                       " is an input; a limit is put on a result, such as manifold/temperature");
    else if (!invalid.touches(address))
        limit.complain(no_result(vehicle, address));
}

std::optional<double> read_bound(const fields::Cursor& limit, std::string_view key,
                                 const fields::Measure& measure) {
    if (!limit.has(key)) return std::nullopt;
    const auto read = fields::read_quantity(measure, limit[key]);
    return read ? std::optional(read->value) : std::nullopt;
}

std::optional<solve::Limit> read_limit(const fields::Cursor& limit, std::string_view address,
                                       const fields::Row& row) {
    Reason reason;
    fields::read(fields::group_type<Reason>, &reason, limit, {"max", "min"});
    if (!limit.is_object()) return std::nullopt;
    solve::Limit made{std::string(address), read_bound(limit, "max", row.measure),
                      read_bound(limit, "min", row.measure), reason.why};
    if (!limit.has("max") && !limit.has("min"))
        limit.complain_about_key("max", "is missing; a limit has a max, a min or both");
    if (made.max && made.min && *made.max < *made.min)
        limit.complain_about_key("max", "the max is below the min, so nothing could be within");
    return made;
}

}  // namespace

std::vector<solve::Limit> read_limits(const fields::Cursor& limits,
                                      std::span<const vehicle::Vehicle> layouts,
                                      const InvalidAddresses& invalid) {
    std::vector<solve::Limit> read;
    if (!fields::is_object_of("result addresses", most_limits, limits)) return read;
    Results results;
    for (const auto& layout : layouts)
        collect_results(layout, results);
    for (const auto address : limits.keys()) {
        const auto limit = limits[address];
        const auto row = results.find(address);
        if (row != results.end()) {
            if (auto made = read_limit(limit, address, *row->second))
                read.push_back(*std::move(made));
        } else {
            complain_about(limit, address, layouts.front(), invalid);
        }
    }
    return read;
}

}  // namespace windwall::scenario
