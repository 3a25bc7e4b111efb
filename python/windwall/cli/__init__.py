"""The command `windwall`."""
