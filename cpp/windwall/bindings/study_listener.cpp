#include "windwall/bindings/study_listener.hpp"

namespace windwall::bindings {

namespace py = pybind11;

bool Listener::go_on(std::size_t done, std::size_t total) {
    const py::gil_scoped_acquire gil;
    if (raised_) return false;
    try {
        return hear(done, total);
    } catch (py::error_already_set&) {
        raised_ = std::current_exception();
        return false;
    }
}

bool Listener::hear(std::size_t done, std::size_t total) {
    if (PyErr_CheckSignals() != 0) throw py::error_already_set();
    if (callback_.is_none()) return true;
    return !callback_(done, total).is(py::bool_(false));
}

}  // namespace windwall::bindings
