#pragma once
#include "windwall/fields/one_of.hpp"
#include "windwall/fields/row.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// A rig that nobody builds, with one member of every shape a row can have.
namespace sample {

using namespace windwall::fields;

struct Sieve {
    static constexpr std::string_view kind = "sieve";
    static constexpr std::string_view description = "Cloth across the duct.";
    double drop{};
    double at_flow = 0.025;
    static std::span<const Row> rows() {
        static constexpr Row table[] = {
            required("drop", "dp", at<&Sieve::drop>, pressure_difference("kPa"), {0, 20},
                     "Pressure lost across the cloth"),
            with_default("at_flow", "m", at<&Sieve::at_flow>, mass_flow("g/s"), {1, 500}, 2,
                         "Flow at which the drop was measured", "common practice"),
        };
        return table;
    }
};

struct Fan {
    static constexpr std::string_view kind = "fan";
    static constexpr std::string_view description = "A fan on a belt.";
    double bore{};
    double drive_ratio{};
    double leak_area = 9e-6;
    std::optional<double> boost;
    static std::span<const Row> rows() {
        static constexpr Row table[] = {
            required("bore", "D", at<&Fan::bore>, length("mm"), {8, 120}, "Bore of the inlet"),
            required("drive_ratio", "i", at<&Fan::drive_ratio>, number(), {0.2, 5},
                     "Turns of the fan to one of the crank"),
            with_default("leak_area", "A", at<&Fan::leak_area>, area("mm2"), {0, 100}, 2,
                         "Area of all gaps together", "common practice"),
            optional("boost", "p", at<&Fan::boost>, gauge_pressure("kPa"), {-50, 200},
                     "Pressure seen behind the fan"),
        };
        return table;
    }
};

struct Belt {
    static constexpr std::string_view kind = "belt";
    static constexpr std::string_view description = "A flat belt.";
    double tension{};
    static std::span<const Row> rows() {
        static constexpr Row table[] = {required("tension", "F", at<&Belt::tension>, force("N"),
                                                 {0, 5000}, "Tension of the slack side")};
        return table;
    }
};

struct Chain {
    static constexpr std::string_view kind = "chain";
    static constexpr std::string_view description = "A roller chain.";
    double efficiency = 0.97;
    static std::span<const Row> rows() {
        static constexpr Row table[] = {with_default("efficiency", "eta", at<&Chain::efficiency>,
                                                     number(), {0.5, 1}, 0.01,
                                                     "Power out to power in", "common practice")};
        return table;
    }
};

struct Weather {
    static constexpr std::string_view description = "The air of the day.";
    double temperature = 293.15;
    double pressure = 101325;
    double humidity = 0.5;
    double headwind = 0;
    std::optional<double> altitude;
    static std::span<const Row> rows() {
        static constexpr Row table[] = {
            with_default("temperature", "T", at<&Weather::temperature>,
                         windwall::fields::temperature("degC"), {-40, 60}, 3,
                         "Temperature in the shade", "common practice"),
            with_default("pressure", "p", at<&Weather::pressure>, absolute_pressure("kPa"),
                         {60, 110}, 1, "Pressure where the rig stands", "common practice"),
            with_default("humidity", "phi", at<&Weather::humidity>, percent(), {0, 100}, 15,
                         "Relative humidity", "common practice"),
            with_default("headwind", "w", at<&Weather::headwind>, speed("m/s"), {-20, 20}, 1,
                         "Wind from the front", "common practice"),
            optional("altitude", "z", at<&Weather::altitude>, length("m"), {-400, 5000},
                     "Height above the sea"),
        };
        return table;
    }
    std::optional<Violation> check() const {
        if (altitude && *altitude > 4000 && pressure > 90e3)
            return Violation{"altitude", "no place this high has so much air"};
        return std::nullopt;
    }
};

struct Body {
    static constexpr std::string_view description = "What moves.";
    double mass{};
    double drag_area{};
    static std::span<const Row> rows() {
        static constexpr Row table[] = {
            required("mass", "m", at<&Body::mass>, windwall::fields::mass("kg"), {20, 2000},
                     "Mass with the driver"),
            required("drag_area", "CdA", at<&Body::drag_area>, area("m2"), {0.05, 3},
                     "Drag coefficient times frontal area"),
        };
        return table;
    }
};

struct Rating {
    static constexpr std::string_view description = "What the maker promises.";
    double top_speed = 500;
    static std::span<const Row> rows() {
        static constexpr Row table[] = {
            with_default("top_speed", "n", at<&Rating::top_speed>, angular_speed("rpm"), {0, 30000},
                         100, "Speed never to be passed", "common practice")};
        return table;
    }
};

enum class Mood { calm, brisk, wild };

}  // namespace sample

template <>
struct windwall::fields::Names<sample::Mood> {
    static constexpr std::array<std::string_view, 3> names{"calm", "brisk", "wild"};
};

namespace sample {

using Part = OneOf<Sieve, Fan>;
using Drive = OneOf<Belt, Chain>;

struct Rig {
    static constexpr std::string_view description = "A rig with one of everything.";
    std::string title;
    Mood mood = Mood::calm;
    bool lit = false;
    Weather weather;
    Body body;
    std::optional<Rating> rating;
    std::vector<Entry<Part>> duct;
    Drive drive;
    std::vector<double> ratios;
    Columns spark;
    double hours = 0;
    double price = 0;

    static constexpr Column spark_columns[] = {
        {"turning", angular_speed("rpm"), {0, 20000}, "Speed of the crank"},
        {"advance", angle("deg"), {-20, 60}, "Spark before top dead centre"},
    };
    static std::span<const Row> rows() {
        static constexpr Row table_[] = {
            text("title", at<&Rig::title>, "What the rig is called"),
            choice("mood", at<&Rig::mood>, "How it feels", "common practice"),
            flag("lit", at<&Rig::lit>, "Whether the lamp burns", "common practice"),
            group("weather", at<&Rig::weather>, "Air of the day"),
            group("body", at<&Rig::body>, "What is moved"),
            optional_group("rating", at<&Rig::rating>, "Ratings of the maker"),
            parts("duct", at<&Rig::duct>, "What the air passes through, in its order"),
            tagged("drive", at<&Rig::drive>, "What turns the fan"),
            list("ratios", "i", at<&Rig::ratios>, number(), {0.3, 8}, {1, 8},
                 "Ratios of the gears"),
            table("spark", at<&Rig::spark>, spark_columns, "Spark over speed"),
            with_default("hours", "", at<&Rig::hours>, labour("h"), {0, 1000}, 0, "Time of work",
                         "none yet"),
            with_default("price", "", at<&Rig::price>, money("EUR"), {0, 1e6}, 0, "What it costs",
                         "none yet"),
        };
        return table_;
    }
};

inline constexpr std::string_view rig_text = R"({
  "title": "Two drums and a fan",
  "mood": "brisk",
  "lit": true,
  "weather": {"temperature": "33 degC", "pressure": "98.4 kPa", "humidity": "35 ± 5 %", "headwind": "0 ± 1 m/s"},
  "body": {"mass": "348 ± 5 kg", "drag_area": "0.56 +/- 0.05 m2"},
  "duct": [
    {"id": "cloth", "kind": "sieve", "drop": "0.6 kPa"},
    {"id": "blower", "kind": "fan", "bore": "36 mm", "drive_ratio": 1.35, "leak_area": "9 ± 2 mm2", "boost": "38 kPa ± 5 %"}
  ],
  "drive": {"kind": "belt", "tension": "120 lbf"},
  "ratios": [3.2, 2.0, 1.45, 1.1],
  "spark": {"columns": {"turning": "rpm", "advance": "deg"}, "rows": [[1000, 10], [3000, 22.5]]},
  "hours": 12,
  "price": "260 EUR"
}
)";

}  // namespace sample
