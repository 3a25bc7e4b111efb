#include <pybind11/pybind11.h>

namespace windwall::bindings {
void bind_build_info(pybind11::module_& module);
void bind_problems(pybind11::module_& module);
void bind_units(pybind11::module_& module);
void bind_scenario(pybind11::module_& module);
void bind_facts(pybind11::module_& module);
void bind_design(pybind11::module_& module);
void bind_solve(pybind11::module_& module);
void bind_drive(pybind11::module_& module);
void bind_flyweights(pybind11::module_& module);
void bind_rank(pybind11::module_& module);
void bind_sweep(pybind11::module_& module);
void bind_worlds(pybind11::module_& module);
void bind_media_physics(pybind11::module_& physics);
void bind_charge_physics(pybind11::module_& physics);
void bind_compressor_physics(pybind11::module_& physics);
void bind_wet_physics(pybind11::module_& physics);
void bind_engine_physics(pybind11::module_& physics);
void bind_knock_physics(pybind11::module_& physics);
void bind_driveline_physics(pybind11::module_& physics);
void bind_road_physics(pybind11::module_& physics);
}  // namespace windwall::bindings

PYBIND11_MODULE(_core, module) {
    using namespace windwall::bindings;
    module.doc() = "The C++ core of windwall; use it through the package windwall.";
    bind_build_info(module);
    bind_problems(module);
    bind_units(module);
    bind_scenario(module);
    bind_facts(module);
    bind_design(module);
    bind_solve(module);
    bind_drive(module);
    bind_flyweights(module);
    bind_rank(module);
    bind_sweep(module);
    bind_worlds(module);

    auto physics = module.def_submodule("physics", "Handbook formulas, SI units.");
    bind_media_physics(physics);
    bind_charge_physics(physics);
    bind_compressor_physics(physics);
    bind_wet_physics(physics);
    bind_engine_physics(physics);
    bind_knock_physics(physics);
    bind_driveline_physics(physics);
    bind_road_physics(physics);
}
