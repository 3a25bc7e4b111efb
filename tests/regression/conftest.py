"""One flag, so that kept texts change on purpose only."""

import pytest


def pytest_addoption(parser):
    parser.addoption("--regenerate", action="store_true", help="keep what is said now as the text")


@pytest.fixture
def regenerate(request):
    return request.config.getoption("--regenerate", default=False)
