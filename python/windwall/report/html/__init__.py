"""Answers as fragments of HTML, made of the same blocks as their texts."""

from windwall.report.html.fragment import fragment

__all__ = ["fragment"]
