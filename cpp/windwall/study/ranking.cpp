#include "windwall/study/ranking.hpp"

#include <algorithm>

namespace windwall::study {

using namespace fields;

bool SetResult::ends_early(std::size_t anchor) const noexcept {
    return std::ranges::find(cut_short, anchor) != cut_short.end();
}

std::span<const Row> SetResult::rows() {
    using S = SetResult;
    static constexpr Row table[] = {
        fact("upgrades", at<&S::upgrades>, "Ids of what is in the set"),
        fact("answered", at<&S::answered>, "Whether there is a speed"),
        fact("recommended", at<&S::recommended>,
             "Whether its pull is answered to the end and passes no limit"),
        fact("refused_for", at<&S::refused_for>, "Why it is not recommended"),
        fact("refusal", at<&S::refusal>, "What installing it came upon"),
        fact("limited_by", at<&S::limited_by>,
             "How its pull ends, at the middle anchor; at a standstill where nothing is answered"),
        optional_group("unanswered", at<&S::unanswered>, "What has no answer, and ends the pull"),
        fact("cut_short", at<&S::cut_short>,
             "Knock anchors, from 0, at which answers end with thrust to spare; the speed is that "
             "where they end"),
        result("speed", "v", at<&S::speed>, fields::speed("km/h"),
               "The goal's speed at the lower, middle and upper knock anchor"),
        result("balance_speed", "v_b", at<&S::balance_speed>, fields::speed("km/h"),
               "Where its pull ends on a road without end, at the middle anchor"),
        result("least_margin", "M", at<&S::least_margin>, number(),
               "Least knock margin on the way up, octane numbers, at the middle anchor"),
        result("retard", "r", at<&S::retard>, angle("deg"),
               "Spark later than best torque at the end of its pull, at the middle anchor"),
        result("lambda", "lambda", at<&S::lambda>, number(),
               "Mixture there: richer than the engine's own where knock asks for it"),
        result("opening", "o", at<&S::opening>, percent(),
               "Share of the throttle's travel there: below full where knock holds it back"),
        result("cost", "", at<&S::cost>, money(""), "What its upgrades cost"),
        result("hours", "t", at<&S::hours>, labour("h"), "What its upgrades take"),
        fact("passed", at<&S::passed>, "Limits passed, at the middle anchor"),
        fact("chosen", at<&S::chosen>, "What each open choice took, at the middle anchor"),
        fact("chosen_lower", at<&S::chosen_lower>, "The same at the lower anchor"),
        fact("chosen_upper", at<&S::chosen_upper>, "The same at the upper anchor"),
    };
    return table;
}

std::span<const Row> Partner::rows() {
    using P = Partner;
    static constexpr Row table[] = {
        fact("id", at<&P::id>, "Id of the other upgrade"),
        fact("pair", at<&P::pair>, "Which set holds the two and what they require")
            .pointing_into("sets"),
        result("together", "dv", at<&P::together>, speed("km/h"),
               "What the pair adds to the vehicle as it is, at the three anchors"),
        result("beside", "dv", at<&P::beside>, speed("km/h"),
               "What the upgrade adds where the other is fitted"),
        result("interaction", "dv", at<&P::interaction>, speed("km/h"),
               "By how much that is more than without the other"),
    };
    return table;
}

std::span<const Row> UpgradeGain::rows() {
    using U = UpgradeGain;
    static constexpr Row table[] = {
        fact("id", at<&U::id>, "Id of the upgrade"),
        result("alone", "dv", at<&U::alone>, speed("km/h"),
               "Fitted first, with what it requires, at the three anchors"),
        result("last", "dv", at<&U::last>, speed("km/h"), "Taken off the target"),
        result("share", "dv", at<&U::share>, speed("km/h"),
               "Its mean part in the target over all orders of fitting"),
        fact("in_target", at<&U::in_target>, "Whether it is in the target"),
        fact("outside", at<&U::outside>, "Why it is not in the target"),
        fact("fitted_first", at<&U::fitted_first>, "Which set is it and what it requires")
            .pointing_into("sets"),
        fact("beside_target", at<&U::beside_target>,
             "Which set is the target with it and what it requires")
            .pointing_into("sets"),
        fact("passed", at<&U::passed>, "Limits passed with only this and what it requires fitted"),
        fact("chosen", at<&U::chosen>, "What its open choices took, fitted first"),
        optional_group("best_pair", at<&U::best_pair>,
                       "The fastest pair it is in, within the budget and all limits"),
        optional_group("most_helped", at<&U::most_helped>,
                       "The partner with which it gains most above its gain without"),
        optional_group("most_hindered", at<&U::most_hindered>,
                       "The partner with which it loses most of its gain without"),
    };
    return table;
}

std::span<const Row> Missing::rows() {
    static constexpr Row table[] = {
        result("power", "dP", at<&Missing::power>, fields::power("kW"), "More at the flywheel"),
        result("drag_area", "dCdA", at<&Missing::drag_area>, area("m2"), "Drag area to take off"),
    };
    return table;
}

std::span<const Row> SecondOpinion::rows() {
    using S = SecondOpinion;
    static constexpr Row table[] = {
        fact("set", at<&S::set>, "Which set it is about").pointing_into("sets"),
        result("above_the_rule", "dM", at<&S::above_the_rule>, number(),
               "Octane numbers that the delay of the end gas has to spare above the rule"),
        result("speed", "v", at<&S::speed>, fields::speed("km/h"),
               "Its speed with the rule's knock anchor moved until both agree"),
    };
    return table;
}

std::span<const Row> EndOfPull::rows() {
    using E = EndOfPull;
    static constexpr Row table[] = {
        fact("set", at<&E::set>, "Which set it is about").pointing_into("sets"),
        result("boost", "p_m - p_a", at<&E::boost>, gauge_pressure("kPa"),
               "Pressure in the manifold above the local air"),
        result("head_temperature", "T_h", at<&E::head_temperature>, temperature("degC"),
               "Temperature of the cylinder head"),
        result("blower_outlet_temperature", "T_2", at<&E::blower_outlet_temperature>,
               temperature("degC"), "Temperature behind the blower that makes it hottest"),
        result("water_per_fuel", "W/F", at<&E::water_per_fuel>, number(),
               "Water that is sprayed, by mass of all fuel; its octane is measured to 0.6"),
        result("margin_without_spray", "M_d", at<&E::margin_without_spray>, number(),
               "Knock margin the moment every jet is blocked, spark and fuel as they are"),
    };
    return table;
}

std::span<const Row> Ranking::rows() {
    using R = Ranking;
    static constexpr Row table[] = {
        fact("status", at<&R::status>, "Solved, or cancelled with what was done until then"),
        fact("considered", at<&R::considered>, "How many upgrades are considered"),
        fact("solved", at<&R::solved>, "How many sets of them are solved"),
        fact("allowed", at<&R::allowed>, "How many sets of them are allowed"),
        result("knock_anchors", "ON", at<&R::knock_anchors>, number(),
               "Octane numbers of the knock anchors"),
        fact("upgrades", at<&R::upgrades>, "Every upgrade in the order of the menu"),
        fact("leaders", at<&R::leaders>,
             "The upgrades that gain most alone within the budget, the most first")
            .pointing_into("upgrades"),
        fact("sets", at<&R::sets>, "Every allowed set, the empty one first"),
        fact("number_cut_short", at<&R::number_cut_short>,
             "How many sets end with thrust to spare, for want of an answer, at the middle anchor"),
        fact("smallest_cut_short", at<&R::smallest_cut_short>, "Those of them that hold no other")
            .pointing_into("sets"),
        fact("fastest", at<&R::fastest>, "The fastest set within the budget that passes no limit")
            .pointing_into("sets"),
        fact("target", at<&R::target>,
             "The cheapest set that cannot be told from the fastest; fair shares are of it")
            .pointing_into("sets"),
        result("lead", "dv", at<&R::lead>, speed("km/h"),
               "By how much the fastest set is faster than the target, at the three anchors"),
        result("smallest_lead", "dv", at<&R::smallest_lead>, speed("km/h"),
               "A lead that is no larger cannot be told: 0.5 km/h, or the +/- of an observed "
               "speed where that is more"),
        fact("best_by_cost", at<&R::best_by_cost>, "Sets faster than all that cost no more")
            .pointing_into("sets"),
        fact("best_by_hours", at<&R::best_by_hours>, "Sets faster than all that take no longer")
            .pointing_into("sets"),
        fact("cheapest_to_goal", at<&R::cheapest_to_goal>,
             "The cheapest set that reaches the goal's speed")
            .pointing_into("sets"),
        fact("ends_of_pulls", at<&R::ends_of_pulls>,
             "What the sets that are named have where their pull ends"),
        fact("second_opinions", at<&R::second_opinions>,
             "What the second model of knock makes of the base, the leaders and the sets named"),
        optional_group("missing", at<&R::missing>, "What the fastest set lacks to the goal"),
    };
    return table;
}

}  // namespace windwall::study
