#include <pybind11/pybind11.h>

namespace windwall::bindings {
void bind_build_info(pybind11::module_& module);
}  // namespace windwall::bindings

PYBIND11_MODULE(_core, module) {
    using namespace windwall::bindings;
    module.doc() = "The C++ core of windwall; use it through the package windwall.";
    bind_build_info(module);

    auto physics = module.def_submodule("physics", "Handbook formulas, SI units.");
}
