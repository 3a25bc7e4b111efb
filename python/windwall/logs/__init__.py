"""Logs as loggers write them: read, mended, mapped onto results, cut into pulls, made facts."""
