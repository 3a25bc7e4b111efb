"""What a person reads: one file for each kind of answer."""
