#include "windwall/bindings/scenario_problems.hpp"

#include <pybind11/pybind11.h>

namespace windwall::bindings {

namespace py = pybind11;

namespace {

void raise(const WrongInput& wrong) {
    py::list problems;
    for (const fields::Problem& problem : wrong.problems())
        problems.append(
            py::make_tuple(problem.address, problem.line, problem.column, problem.message));
    const py::object type = py::module_::import("windwall.errors").attr("ScenarioError");
    const py::object made = type(problems, wrong.source());
    PyErr_SetObject(type.ptr(), made.ptr());
}

}  // namespace

void bind_problems(py::module_&) {
    py::register_exception_translator([](std::exception_ptr thrown) {
        try {
            if (thrown) std::rethrow_exception(thrown);
        } catch (const WrongInput& wrong) {
            raise(wrong);
        }
    });
}

}  // namespace windwall::bindings
