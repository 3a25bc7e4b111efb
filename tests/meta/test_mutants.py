"""What is said of mutants that live is said of lines that are there."""

from meta import mutate


def test_every_explained_mutant_is_still_one():
    made = {(file, line.strip()) for _, file, _, line in mutate.all_mutants(list(mutate.GUARDS))}
    for (file, line), why in mutate.explained().items():
        assert (file, line) in made, f"{file} no longer has a line that becomes: {line}"
        assert len(why.split()) > 5, f"{line}: why does it live?"
