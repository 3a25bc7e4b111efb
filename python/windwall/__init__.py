"""Whole-vehicle performance model for small, blown, home-made vehicles."""

from windwall._core import build_info

__all__ = ["build_info"]
