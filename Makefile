# Two commands matter: make demo, make test. Both install what is missing.
SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help
.PHONY: help demo test test-all docs stubs evidence bench build build-all live second-compiler format lint clean

build := build/dev
bin := .venv/bin
# Two builds at once wait for each other.
cmake_build := $(if $(shell command -v flock),flock $(build) )cmake --build $(build)
CLANG ?= clang++-14
EIGEN ?= /usr/include/eigen3
cpp_sources = $$(find cpp tests -name '*.[ch]pp')

help:  ## say what there is
	@grep -hE '^[a-z-]+:.*## ' $(MAKEFILE_LIST) | sed -E 's/^([a-z-]+):.*## /make \1\t/' | expand -t 16

demo:  ## install, build, and rank the upgrades of the example
	@.ci/setup
	@$(MAKE) --no-print-directory build
	$(bin)/windwall rank scenarios/airfield_cyclecar.json
	@printf '\nNext, your own: $(bin)/windwall new mine.json, then $(bin)/windwall report mine.json -o mine.html\n'

test: choose = not slow
test: level = test
test: run-tests  ## install, build and run the tests
test-all: choose = slow or not slow
test-all: level = docs
test-all: run-tests  ## the same with the long ones

.PHONY: run-tests
run-tests:
	@.ci/setup $(level)
	@$(MAKE) --no-print-directory build-all
	ctest --test-dir $(build) --output-on-failure --no-tests=error -j2 --progress --quiet --output-log $(build)/ctest.log || { cat $(build)/ctest.log; exit 1; }
	@tail -4 $(build)/ctest.log
	$(bin)/python -m pytest -m "$(choose)"

# Notebooks run the first time, and again when they or the package changed.
docs:  ## build the documentation site into build/docs
	@.ci/setup docs
	@$(MAKE) --no-print-directory build
	$(bin)/python -m sphinx -q -W --keep-going -c docs -d build/docs-trees . build/docs
	@echo "open build/docs/index.html"

stubs: build  ## describe the compiled core anew for type checkers
	@$(bin)/pybind11-stubgen windwall._core --output-dir python --exit-code

evidence:  ## make docs/evidence.md of what the tests held against the world
	@test -x $(bin)/clang-format || .ci/setup test
	$(bin)/python -m pytest -q tests/published --evidence

bench:  ## count and time points, top speeds and a standing kilometre
	@test -x $(bin)/clang-format || .ci/setup test
	@$(cmake_build) --target bench -- --quiet
	@PYTHONPATH=tests $(bin)/python -m bench.bench $(build)/bench scenarios/*.json

# The installed module is replaced where it lies, so no Python package is touched.
build:  ## build the C++ core after an edit
	@test -f $(build)/build.ninja || .ci/setup
	@$(cmake_build) --target _core -- --quiet
	@DESTDIR= cmake --install $(build) --prefix "$$($(bin)/python -c 'import sysconfig; print(sysconfig.get_path("platlib"))')" >/dev/null

build-all: build
	@$(cmake_build) -- --quiet

# Not part of the two commands: it needs Debian's emscripten, and some minutes.
live_core := python/windwall/report/live/core.wasm
live:  ## compile the core for browsers, for sliders inside a page
	@command -v emcmake >/dev/null || { echo "make live needs em++: on Debian, apt-get install emscripten"; exit 1; }
	@mkdir -p build
	@emcmake cmake -S . -B build/live -G Ninja -DWINDWALL_UNITY=ON -DWINDWALL_WARNINGS_AS_ERRORS=OFF >build/live.log || { cat build/live.log; exit 1; }
	@cmake --build build/live --target core
	@cp build/live/core.wasm $(live_core)
	@echo "$(live_core): $$(stat -c %s $(live_core)) bytes"

# Every file of the core, read and checked but not translated.
second-compiler:  ## let clang read the core: make second-compiler CLANG=clang++-14
	@find cpp/windwall -name '*.cpp' -not -path '*/bindings/*' -print0 | xargs -0 -P 2 -n 1 \
	  $(CLANG) -std=c++20 -fsyntax-only -Wall -Wextra -Wno-missing-field-initializers -Werror -Icpp -isystem $(EIGEN)
	@echo "$$($(CLANG) --version | head -1) reads every file of the core"

format:  ## format C++ and Python in place
	@test -x $(bin)/clang-format || .ci/setup test
	@$(bin)/clang-format -i $(cpp_sources)
	@$(bin)/ruff format .
	@$(bin)/ruff check --fix .

lint:  ## complain about format, style and types
	@test -x $(bin)/clang-format || .ci/setup test
	@$(bin)/clang-format --dry-run --Werror $(cpp_sources)
	@$(bin)/ruff format --check .
	@$(bin)/ruff check .
	@$(bin)/mypy

clean:  ## remove what was built and installed here
	rm -rf build .venv .pytest_cache .ruff_cache .mypy_cache .hypothesis
