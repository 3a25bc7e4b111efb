"""Answers as data: numbers in SI and words of closed lists. They know no scenario and no report."""
