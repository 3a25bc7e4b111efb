"""What people and programs read: texts, JSON documents, pandas objects and plots.

Importing it makes the views of every result; see `windwall.results.views`.
"""

from windwall.report import (
    documents,
    drawn_documents,
    frames,
    html,
    leans_documents,
    learned_documents,
    log_documents,
    road_documents,
    sure_documents,
    text,
    wording,
)

__all__ = [
    "documents",
    "drawn_documents",
    "frames",
    "html",
    "leans_documents",
    "learned_documents",
    "log_documents",
    "road_documents",
    "sure_documents",
    "text",
    "wording",
]
