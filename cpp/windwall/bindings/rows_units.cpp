#include "windwall/bindings/rows_units.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/fields/units.hpp"

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace windwall::bindings {

namespace py = pybind11;
using fields::Dimension;
using fields::System;

namespace {

/// The dimension of a name as the rows' descriptions give it.
Dimension dimension_named(std::string_view name) {
    for (const fields::Unit& unit : fields::all_units()) {
        if (fields::name_of(unit.dimension) == name) return unit.dimension;
    }
    throw py::value_error("no dimension is called \"" + std::string(name) + "\"");
}

/// The unit itself where it is one of the table, since Python's text may be gone before it.
fields::Measure measure(std::string_view dimension, std::string_view unit) {
    const Dimension found = dimension_named(dimension);
    const fields::Unit* known = fields::find_unit(found, unit);
    if (!known) throw py::value_error(fields::unit_complaint(unit, {found, {}}));
    return {found, known->text};
}

System system_named(std::string_view name) { return name == "us" ? System::us : System::metric; }

std::string readable(double si, std::string_view dimension, std::string_view unit,
                     std::string_view system, int digits) {
    return fields::readable(si, measure(dimension, unit), system_named(system), digits);
}

std::string readable_number(double number, int digits) {
    return fields::readable_number(number, digits);
}

std::string unit_shown(std::string_view dimension, std::string_view unit, std::string_view system) {
    return std::string(fields::unit_in(measure(dimension, unit), system_named(system)).text);
}

double in_unit(double si, std::string_view dimension, std::string_view unit,
               std::string_view system) {
    return fields::from_si(si, fields::unit_in(measure(dimension, unit), system_named(system)));
}

/// A quantity as a file would state it, with its standard deviation where there is one.
std::pair<double, std::optional<double>> read_quantity(std::string_view text,
                                                       std::string_view dimension,
                                                       std::string_view unit,
                                                       std::string_view example) {
    const auto read = fields::read_quantity(text, measure(dimension, unit), example);
    if (!read) throw py::value_error(read.violation);
    return {read->value, read->sigma};
}

}  // namespace

std::string_view si_unit(Dimension dimension) {
    for (const fields::Unit& unit : fields::units_of(dimension)) {
        if (unit.factor == "1" && unit.divisor == "1" && unit.shift == "0") return unit.udunits;
    }
    return "1";
}

void bind_units(py::module_& module) {
    module.def("readable", &readable, py::arg("si"), py::arg("dimension"), py::arg("unit"),
               py::arg("system"), py::arg("digits") = 3,
               "An SI number for people, in the unit their system uses in place of this one.");
    module.def("readable_number", &readable_number, py::arg("number"), py::arg("digits") = 3,
               "A plain number for people.");
    module.def("unit_shown", &unit_shown, py::arg("dimension"), py::arg("unit"), py::arg("system"),
               "The unit that people of this system use in place of this one.");
    module.def(
        "si_unit",
        [](std::string_view dimension) { return std::string(si_unit(dimension_named(dimension))); },
        py::arg("dimension"), "The SI unit that numbers of a dimension are held in.");
    module.def("in_unit", &in_unit, py::arg("si"), py::arg("dimension"), py::arg("unit"),
               py::arg("system"), "An SI number in the unit that people of this system use.");
    module.def("read_quantity", &read_quantity, py::arg("text"), py::arg("dimension"),
               py::arg("unit"), py::arg("example"),
               "Value and standard deviation in SI of a text such as \"0.70 ± 0.05 m2\".");
}

}  // namespace windwall::bindings
