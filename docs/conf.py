"""The documentation site: `make docs` builds it of the pages as they lie in the checkout.

The whole checkout is the source, so that a link between two files means the same on the site, in
an editor and on a page that shows the repository. What a physics page gets besides its text is
made by the small extensions in docs/site.
"""

import sys
from importlib.metadata import version as version_of
from pathlib import Path

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE / "site"))

project = "windwall"
author = copyright = "windwall contributors"
version = release = version_of("windwall")
language = "en"

root_doc = "docs/index"
include_patterns = ["docs/**.md", "notebooks/*.ipynb", "DEVELOPERS.md", "tests/published/data/*.md"]
exclude_patterns = [".*", "build", "cpp", "python", "scenarios", "**/.ipynb_checkpoints"]
extensions = [
    "myst_nb",
    "sphinx.ext.autodoc",
    "sphinx_design",
    "docstrings",
    "equations",
    "inputs",
    "checks",
]

myst_heading_anchors = 4
myst_links_external_new_tab = False

# Notebooks run once and again only when they changed.
nb_execution_mode = "cache"
nb_execution_cache_path = str(HERE.parent / "build/docs-cache")
nb_execution_timeout = 240
nb_execution_raise_on_error = True
nb_execution_show_tb = True
nb_merge_streams = True
nb_ipywidgets_js = {}  # the usual ones are fetched from elsewhere
nb_mime_priority_overrides = [("html", "application/vnd.jupyter.widget-view+json", None)]

default_role = "code"  # docstrings are written as the pages are: one backtick is code
autodoc_member_order = "bysource"
autodoc_typehints = "signature"
autodoc_preserve_defaults = True
python_use_unqualified_type_names = True
python_maximum_signature_line_length = 76

html_theme = "pydata_sphinx_theme"
html_title = "windwall"
html_static_path = ["site/style.css"]
html_css_files = ["style.css"]
html_show_sourcelink = False
html_copy_source = False
html_additional_pages = {"index": "to_the_first_page.html"}
templates_path = ["site/templates"]
html_sidebars = {"docs/start": [], "docs/evidence": []}  # nothing lies below them
html_context = {"default_mode": "auto"}
html_theme_options = {
    "navigation_with_keys": False,
    "show_prev_next": True,
    "secondary_sidebar_items": ["page-toc"],
    "navbar_align": "left",
    "navbar_persistent": ["search-button"],  # a field would not fit beside seven links
    "header_links_before_dropdown": 7,
    "footer_start": ["copyright"],
    "footer_end": [],
}
