"""One page about a vehicle that can be sent: answer, pictures, sliders, and its scenario."""

from windwall.report.page.page import page, write_page

__all__ = ["page", "write_page"]
