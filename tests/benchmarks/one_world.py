"""Build one world in the database of the settings, measure in it, and write what came out as one line of JSON."""

import json
import sys
from dataclasses import asdict
from time import perf_counter

import django


def main(size: int, repeat: int) -> None:
    django.setup()
    from django.core.management import call_command

    import inventory.config.wsgi  # noqa: F401  (what the server sets up for itself holds here too)
    from tests.benchmarks.building import build
    from tests.benchmarks.measuring import Measuring

    call_command("migrate", verbosity=0)
    begun = perf_counter()
    facts = build(size)
    built_in = perf_counter() - begun
    say(f"  {facts.movements:,} movements, {facts.pours:,} pours and {facts.lots:,} lots built in {built_in:.0f} s")
    measured = []
    for one in Measuring(facts, repeat=repeat).all():
        say(f"  {one.name}: {one.ours:,.1f} ms")
        measured.append(asdict(one))
    print(json.dumps({"movements": facts.movements, "built_in": built_in, "measured": measured}))


def say(words: str) -> None:
    print(words, file=sys.stderr, flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
