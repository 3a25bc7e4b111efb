#include "windwall/bindings/scenario_entries.hpp"

namespace windwall::bindings {

using namespace fields;

std::span<const Row> HeadingEntry::rows() {
    using H = HeadingEntry;
    static constexpr Row table[] = {
        fact("title", at<&H::title>, "What the vehicle is called"),
        fact("notes", at<&H::notes>, "What else the file says of it"),
        fact("units", at<&H::units>, "The system of units that it is read in"),
        fact("currency", at<&H::currency>, "The currency of every cost; empty for none"),
    };
    return table;
}

std::span<const Row> MenuEntry::rows() {
    using M = MenuEntry;
    static constexpr Row table[] = {
        fact("id", at<&M::id>, "Its id"),
        fact("title", at<&M::title>, "What it is called"),
        fact("cost", at<&M::cost>, "In the currency of the file; none where it is not stated"),
        fact("cost_sigma", at<&M::cost_sigma>,
             "One standard deviation of that; none where it is exact"),
        fact("hours", at<&M::hours>, "Hours of work; none where they are not stated"),
        fact("requires", at<&M::required>, "Ids of what it needs, as stated"),
        fact("excludes", at<&M::excluded>, "Ids of what it bars, as stated"),
    };
    return table;
}

std::span<const Row> LimitEntry::rows() {
    using L = LimitEntry;
    static constexpr Row table[] = {
        fact("address", at<&L::address>, "The result that is limited"),
        fact("max", at<&L::max>, "The most it may be"),
        fact("min", at<&L::min>, "The least it may be"),
        fact("why", at<&L::why>, "What happens beyond the limit"),
    };
    return table;
}

std::span<const Row> NarrowingEntry::rows() {
    static constexpr Row table[] = {
        fact("word", at<&NarrowingEntry::word>, "The word that is not known"),
        fact("sigma", at<&NarrowingEntry::sigma>, "What sigma would be with it"),
    };
    return table;
}

std::span<const Row> ClassValueEntry::rows() {
    using C = ClassValueEntry;
    static constexpr Row table[] = {
        fact("address", at<&C::address>, "The input"),
        fact("value", at<&C::value>, "What its class has"),
        fact("sigma", at<&C::sigma>, "One standard deviation of that"),
        fact("stated", at<&C::stated>, "Whether the file states another, which counts"),
        fact("words", at<&C::words>, "Words of the design that have a part in it"),
        fact("narrowed", at<&C::narrowed>, "What each word that is not known would tell"),
        fact("sources", at<&C::sources>, "Where the rows that it draws on come from"),
    };
    return table;
}

std::span<const Row> ClassPriorEntry::rows() {
    using C = ClassPriorEntry;
    static constexpr Row table[] = {
        fact("address", at<&C::address>, "The quantity, from the engine"),
        fact("words", at<&C::words>, "The words it needs"),
        fact("value", at<&C::value>, "Its level, or what the words change"),
        fact("sigma", at<&C::sigma>, "Spread of engines that share these words"),
        fact("source", at<&C::source>, "Where it comes from"),
    };
    return table;
}

std::span<const Row> RatedFigureEntry::rows() {
    using R = RatedFigureEntry;
    static constexpr Row table[] = {
        fact("key", at<&R::key>, "torque or power"),
        fact("rated", at<&R::rated>, "As the maker printed it"),
        fact("sigma", at<&R::sigma>, "What that is known to"),
        fact("before", at<&R::before>, "With the inputs as they were known"),
        fact("met", at<&R::met>, "With the inputs as they met"),
        fact("unreconciled", at<&R::unreconciled>, "Further off than twice what it is known to"),
    };
    return table;
}

std::span<const Row> MovedInputEntry::rows() {
    using M = MovedInputEntry;
    static constexpr Row table[] = {
        fact("address", at<&M::address>, "The input"),
        fact("known", at<&M::known>, "What was known of it"),
        fact("known_sigma", at<&M::known_sigma>, "One standard deviation of that"),
        fact("value", at<&M::value>, "Where the figures are met"),
        fact("sigma", at<&M::sigma>, "One standard deviation of that"),
        fact("sigmas", at<&M::sigmas>, "By how many of the former it was moved"),
    };
    return table;
}

std::span<const Row> RatedFitEntry::rows() {
    using R = RatedFitEntry;
    static constexpr Row table[] = {
        fact("figures", at<&R::figures>, "Every figure that is stated"),
        fact("inputs", at<&R::inputs>, "Every input that was free to move"),
        fact("anchored", at<&R::anchored>, "Whether the maker's fuel tells where it knocks"),
    };
    return table;
}

}  // namespace windwall::bindings
