#include "windwall/scenario/head.hpp"

namespace windwall::scenario {

std::span<const fields::Row> Head::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        text("title", at<&Head::title>, "What the vehicle is called"),
        choice("units", at<&Head::units>, "The units of everything that is printed or plotted",
               "metric, chosen by the project"),
        text("notes", at<&Head::notes>, "Whatever else is to be remembered"),
    };
    return table;
}

}  // namespace windwall::scenario
