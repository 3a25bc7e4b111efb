#include "windwall/road/tyre_tables.hpp"

#include <array>
#include <cstddef>

namespace windwall::road {

namespace {

// Load index 0 to 130, kg, as tyre dealers' tables print it, where a misprint in one was put right
// by the others. The steps are the preferred numbers R80 of ISO 3 but for 35, 61, 115 and 117.
constexpr std::array<double, 131> loads{
    45,   46.2, 47.5, 48.7, 50,   51.5, 53,   54.5, 56,   58,    // 0
    60,   61.5, 63,   65,   67,   69,   71,   73,   75,   77.5,  // 10
    80,   82.5, 85,   87.5, 90,   92.5, 95,   97.5, 100,  103,   // 20
    106,  109,  112,  115,  118,  121,  125,  128,  132,  136,   // 30
    140,  145,  150,  155,  160,  165,  170,  175,  180,  185,   // 40
    190,  195,  200,  206,  212,  218,  224,  230,  236,  243,   // 50
    250,  257,  265,  272,  280,  290,  300,  307,  315,  325,   // 60
    335,  345,  355,  365,  375,  387,  400,  412,  425,  437,   // 70
    450,  462,  475,  487,  500,  515,  530,  545,  560,  580,   // 80
    600,  615,  630,  650,  670,  690,  710,  730,  750,  775,   // 90
    800,  825,  850,  875,  900,  925,  950,  975,  1000, 1030,  // 100
    1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360,  // 110
    1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850,  // 120
    1900,                                                        // 130
};

struct Symbol {
    std::string_view letters;
    double kilometres_an_hour;
};

// As printed in tyre dealers' tables; H stands after U because it is older.
constexpr Symbol symbols[] = {
    {"A1", 5},  {"A2", 10}, {"A3", 15}, {"A4", 20}, {"A5", 25}, {"A6", 30}, {"A7", 35}, {"A8", 40},
    {"B", 50},  {"C", 60},  {"D", 65},  {"E", 70},  {"F", 80},  {"G", 90},  {"J", 100}, {"K", 110},
    {"L", 120}, {"M", 130}, {"N", 140}, {"P", 150}, {"Q", 160}, {"R", 170}, {"S", 180}, {"T", 190},
    {"U", 200}, {"H", 210}, {"V", 240}, {"W", 270}, {"Y", 300},
};

}  // namespace

std::optional<double> load_index_mass(int index) noexcept {
    if (index < 0 || index >= static_cast<int>(loads.size())) return std::nullopt;
    return loads[static_cast<std::size_t>(index)];
}

std::optional<double> speed_symbol_limit(std::string_view symbol) noexcept {
    for (const Symbol& each : symbols)
        if (each.letters == symbol) return each.kilometres_an_hour / 3.6;
    return std::nullopt;
}

}  // namespace windwall::road
