# One file without a name inside, that knows neither files nor a clock.
file(GLOB sources CONFIGURE_DEPENDS cpp/windwall/web/*.cpp)
add_executable(core ${sources})
set_target_properties(core PROPERTIES SUFFIX .wasm)
target_link_libraries(core PRIVATE windwall_scenario windwall_warnings)
target_link_options(core PRIVATE -O2 -fwasm-exceptions --no-entry -sSTANDALONE_WASM=1
    -sALLOW_MEMORY_GROWTH=1 -sINITIAL_MEMORY=33554432
    -sEXPORTED_FUNCTIONS=_windwall_load,_windwall_ask,_malloc,_free)
