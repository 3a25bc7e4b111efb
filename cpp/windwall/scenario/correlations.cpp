#include "windwall/scenario/correlations.hpp"

#include "windwall/fields/nearest.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/scenario/numbers.hpp"
#include "windwall/scenario/solve_rated.hpp"

#include <Eigen/Cholesky>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>
#include <optional>

namespace windwall::scenario {
namespace {

using fields::Cursor;

constexpr double least_pivot = 1e-6;
constexpr double most_correlated = 0.999;
constexpr double least_told = 1e-3;  // a correlation that is worth keeping

std::vector<std::string> uncertain_addresses(const Scenario& scenario) {
    std::vector<std::string> all;
    for (auto& one : uncertain_numbers(scenario))
        all.push_back(std::move(one.address));
    return all;
}

/// Whether numbers with these correlations can be drawn at all.
bool can_be_drawn(std::span<const Correlation> pairs) {
    std::map<std::string, Eigen::Index> place;
    for (const auto& pair : pairs)
        for (const auto& address : pair.between)
            place.emplace(address, static_cast<Eigen::Index>(place.size()));
    const auto size = static_cast<Eigen::Index>(place.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Identity(size, size);
    for (const auto& pair : pairs) {
        const auto i = place.at(pair.between[0]), j = place.at(pair.between[1]);
        matrix(i, j) = matrix(j, i) = pair.correlation;
    }
    const Eigen::LDLT<Eigen::MatrixXd> factored(matrix);
    return size == 0 || factored.vectorD().minCoeff() > least_pivot;
}

std::string no_such_number(std::string_view address, const std::vector<std::string>& known) {
    const std::vector<std::string_view> words(known.begin(), known.end());
    const auto meant = fields::nearest(address, words);
    return fields::in_quotes(address) + " is no number with a ±, so nothing is wrong with it" +
           (meant.empty() ? "" : "; did you mean " + fields::in_quotes(meant) + "?");
}

/// The two addresses of a pair; nothing where something is wrong with them.
std::optional<std::array<std::string, 2>> read_between(const Cursor& entry,
                                                       const std::vector<std::string>& known) {
    const auto between = entry["between"];
    if (!between.is_list() || between.size() != 2) {
        between.complain(
            "two addresses are expected here, such as "
            "[\"body/drag_area\", \"body/rolling_resistance\"]");
        return std::nullopt;
    }
    std::array<std::string, 2> read;
    bool sound = true;
    for (std::size_t at = 0; at < 2; ++at) {
        const auto address = between.entry(at);
        const auto* text = address.text();
        const bool is_known = text && std::ranges::find(known, *text) != known.end();
        if (!is_known)
            address.complain(text ? no_such_number(*text, known)
                                  : "an address is expected here; found " + address.is_what());
        sound = sound && is_known;
        if (text) read[at] = *text;
    }
    if (sound && read[0] == read[1]) {
        between.complain("a number is always wrong with itself; name two");
        return std::nullopt;
    }
    return sound ? std::optional(read) : std::nullopt;
}

bool is_of(const Correlation& one, const std::array<std::string, 2>& between) {
    return one.between == between || one.between == std::array{between[1], between[0]};
}

bool names_any(const Correlation& one, std::span<const std::string> addresses) {
    return std::ranges::any_of(addresses, [&](const std::string& address) {
        return one.between[0] == address || one.between[1] == address;
    });
}

bool is_named_before(const std::vector<Correlation>& read) {
    return std::any_of(read.begin(), read.end() - 1,
                       [&](const Correlation& one) { return is_of(one, read.back().between); });
}

/// Which of the pairs could go, the last of such, so that the others can be drawn.
std::optional<std::size_t> odd_one(const std::vector<Correlation>& read) {
    for (std::size_t at = read.size(); at-- > 0;) {
        auto others = read;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(at));
        if (can_be_drawn(others)) return at;
    }
    return std::nullopt;
}

/// Complains of pairs that all together no numbers could have.
void check_all(const Cursor& list, const std::vector<Correlation>& read,
               const std::vector<std::size_t>& places) {
    if (can_be_drawn(read)) return;
    const std::string why =
        "beside the others this cannot be: what errs with both of two numbers "
        "makes these two err together as well; state that, or less";
    if (const auto odd = odd_one(read))
        list.entry(places[*odd])["correlation"].complain(why);
    else
        list.complain(
            "no numbers err like this: what errs with both of two numbers makes these "
            "two err together as well; state that, or less");
}

std::optional<Correlation> read_one(const Cursor& entry, const std::vector<std::string>& known) {
    if (!entry.is_object()) {
        entry.complain("a correlation is expected here, an object; found " + entry.is_what());
        return std::nullopt;
    }
    Correlation made;
    const auto before = entry.findings().problems.size();
    fields::read(fields::group_type<Correlation>, &made, entry, {"between"});
    if (!entry.has("between")) {
        entry.complain_about_key("between", "is missing; it is the two addresses");
        return std::nullopt;
    }
    const auto between = read_between(entry, known);
    if (between) made.between = *between;
    const bool sound = entry.findings().problems.size() == before;
    return sound ? std::optional(made) : std::nullopt;
}

/// What the rated figures leave between each two inputs that they settled.
std::vector<Correlation> left_by_rated(const engine::RatedFit& fit) {
    std::vector<Correlation> made;
    for (std::size_t i = 0; i < fit.inputs.size(); ++i)
        for (std::size_t j = i + 1; j < fit.inputs.size(); ++j) {
            const double both = fit.correlation(i, j);
            if (std::abs(both) < least_told) continue;
            made.push_back(
                {{of_engine(fit.inputs[i].input.address), of_engine(fit.inputs[j].input.address)},
                 both,
                 "together they meet the rated figures"});
        }
    return made;
}

}  // namespace

std::span<const fields::Row> Correlation::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("correlation", "r", at<&Correlation::correlation>, number(),
                 {-most_correlated, most_correlated},
                 "Correlation of their errors: 1 would be that one follows from the other"),
        text("why", at<&Correlation::why>, "Why they err together"),
    };
    return table;
}

std::vector<Correlation> read_correlations(const Cursor& list, const Scenario& made) {
    std::vector<Correlation> read;
    if (!fields::is_list_of("correlations", most_correlations, list)) return read;
    const auto known = uncertain_addresses(made);
    std::vector<std::size_t> places;
    for (std::size_t at = 0; at < list.size(); ++at) {
        auto one = read_one(list.entry(at), known);
        if (!one) continue;
        read.push_back(*std::move(one));
        places.push_back(at);
        if (!is_named_before(read)) continue;
        list.entry(at)["between"].complain("these two are named above already");
        read.pop_back();
        places.pop_back();
    }
    check_all(list, read, places);
    return read;
}

std::vector<Correlation> all_correlations(const Scenario& scenario) {
    auto all = scenario.correlations;
    if (!scenario.rated) return all;
    const auto stated = [&](const std::string& address) {
        return std::ranges::any_of(scenario.correlations, [&](const Correlation& one) {
            return names_any(one, std::span(&address, 1));
        });
    };
    const auto known = uncertain_addresses(scenario);
    for (auto& one : left_by_rated(scenario.rated->fit)) {
        const bool uncertain = std::ranges::all_of(one.between, [&](const auto& address) {
            return std::ranges::find(known, address) != known.end() && !stated(address);
        });
        if (uncertain) all.push_back(std::move(one));
    }
    return all;
}

void keep_correlations(Scenario& scenario, std::span<const std::string> told_anew) {
    auto all = all_correlations(scenario);
    const auto from = all.begin() + static_cast<std::ptrdiff_t>(scenario.correlations.size());
    all.erase(std::remove_if(from, all.end(),
                             [&](const Correlation& one) {
                                 return std::abs(one.correlation) > most_correlated ||
                                        names_any(one, told_anew);
                             }),
              all.end());
    // What a file would not be read with is not kept: their +/- then stand alone.
    if (all.size() > most_correlations || !can_be_drawn(all)) return;
    auto source =
        scenario.correlations_source ? *scenario.correlations_source : fields::Json::array();
    for (auto at = scenario.correlations.size(); at < all.size(); ++at)
        source.push_back({{"between", all[at].between},
                          {"correlation", all[at].correlation},
                          {"why", all[at].why}});
    scenario.correlations = std::move(all);
    if (!source.empty())
        scenario.correlations_source = std::make_shared<const fields::Json>(std::move(source));
}

void drop_impossible_correlations(Scenario& scenario) {
    if (scenario.correlations.empty()) return;
    const auto known = uncertain_addresses(scenario);
    auto source = fields::Json::array();
    std::vector<Correlation> kept;
    for (std::size_t at = 0; at < scenario.correlations.size(); ++at) {
        auto& one = scenario.correlations[at];
        const bool there = std::ranges::all_of(one.between, [&](const auto& address) {
            return std::ranges::find(known, address) != known.end();
        });
        if (!there) continue;
        source.push_back((*scenario.correlations_source)[at]);
        kept.push_back(std::move(one));
    }
    scenario.correlations = std::move(kept);
    scenario.correlations_source =
        source.empty() ? nullptr : std::make_shared<const fields::Json>(std::move(source));
}

}  // namespace windwall::scenario
