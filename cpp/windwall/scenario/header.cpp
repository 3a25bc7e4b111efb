#include "windwall/scenario/header.hpp"

namespace windwall::scenario {

std::span<const fields::Row> Header::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        text("title", at<&Header::title>, "What the vehicle is called"),
        choice("units", at<&Header::units>, "The units of everything that is printed or plotted",
               "metric, chosen by the project"),
        text("notes", at<&Header::notes>, "Whatever else is to be remembered"),
    };
    return table;
}

}  // namespace windwall::scenario
