"""The invented shop's diary: which jobs it did when, with which tops and coats. Pure: a seed in, the same diary out."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from decimal import Decimal
from random import Random

from inventory.demo.names import CUSTOMERS, TITLES
from inventory.demo.shelf import LOOKS, Look

DAYS = 548
JOBS = 45
# How busy each month is, January first: kitchens are done before summer and again before the holidays.
SEASON = (2, 3, 5, 7, 8, 8, 6, 5, 6, 7, 4, 2)


@dataclass(frozen=True)
class Coat:
    """One coat of a job. needs: (material code, amount, unit)."""

    layer: str
    day: date
    hour: int
    needs: tuple[tuple[str, Decimal, str], ...]
    wasted: tuple[tuple[str, Decimal, str], ...] = ()
    leftover: Decimal | None = None
    note: str = ""


@dataclass
class DiaryJob:
    """A job as it went; `finished_on` is None while it is under way."""

    customer: str
    title: str
    purpose: str
    look: Look
    pieces: list[tuple[str, dict[str, object], int]]
    sqft: Decimal
    started_on: date
    coats: list[Coat] = field(default_factory=list)
    finished_on: date | None = None


def write_diary(*, seed: int, today: date) -> list[DiaryJob]:
    """The jobs of the last eighteen months in the order of their start; the last ones run on past today."""
    random = Random(seed)
    starts = sorted(_busy_day(random, today) for _ in range(JOBS - 4))
    ahead = [today + timedelta(days=days) for days in (-5, -2, 1, 4)]
    starts += [day if day.weekday() < 5 else _next_working(day) for day in ahead]
    jobs = [_job(random, start, index) for index, start in enumerate(starts)]
    for job in jobs:
        last = job.coats[-1].day
        if last + timedelta(days=3) <= today - timedelta(days=4):
            job.finished_on = last + timedelta(days=random.randint(2, 4))
    return jobs


def _busy_day(random: Random, today: date) -> date:
    """A working day, more often in a busy month."""
    while True:
        day = today - timedelta(days=random.randint(12, DAYS - 10))
        if day.weekday() < 5 and random.random() * max(SEASON) < SEASON[day.month - 1]:
            return day


def _job(random: Random, start: date, index: int) -> DiaryJob:
    purpose = {7: "sample", 19: "sample", 31: "sample", 13: "class", 34: "class", 25: "trial"}.get(index, "customer")
    look = random.choice(LOOKS)
    if purpose == "customer":
        title = random.choice(TITLES)
        pieces, sqft = _tops(random, title)
    else:
        title = {"sample": "Sample boards", "class": "Evening class", "trial": "New powder tried"}[purpose]
        pieces, sqft = [("Board", {"length_in": "12", "width_in": "12"}, 4)], Decimal(4)
    customer = "The shop itself" if purpose in ("sample", "trial") else random.choice(CUSTOMERS)
    job = DiaryJob(customer, f"{title}, {look.name}", purpose, look, pieces, sqft, start)
    job.coats = _coats(random, job)
    return job


Tops = tuple[list[tuple[str, dict[str, object], int]], Decimal]


def _tops(random: Random, title: str) -> Tops:
    """Tops with their measures in inches, and about how many square feet they have."""
    if "L with island" in title:
        legs = [{"length_in": str(random.randint(96, 132)), "width_in": "25.5"}, _sides("60", "25.5")]
        run = {"legs": legs, "cutouts": [_sides("30", "18")]}
        island = _sides("60", "36") | {"edges": [_strip("192", "1.5")]}
        return [("Run, L", run, 1), ("Island", island, 1)], Decimal(44)
    if "Bar" in title or "desk" in title:
        length = random.randint(84, 120)
        bar = _sides(str(length), "24") | {"edges": [_strip(str(length), "2")]}
        return [("Bar", bar, 1)], Decimal(length) * 26 / 144
    if "vanit" in title:
        count = 2 if title.startswith("Two") else 1
        vanity = _sides(random.choice(["37", "49", "61"]), "22.5") | {"splash": [_strip("37", "4")]}
        return [("Vanity", vanity, count)], Decimal(count) * Decimal("9.5")
    if "Coffee" in title:
        return [("Round table", {"diameter_in": random.choice(["30", "36", "42"])}, 2)], Decimal(14)
    if "sills" in title:
        return [("Sill", _sides("48", "8") | {"edges": [_strip("48", "1")]}, 4)], Decimal(12)
    length = random.randint(72, 140)
    run = _sides(str(length), "25.5") | {"edges": [_strip(str(length), "1.5")]}
    return [("Run", run, 1)], Decimal(length) * 27 / 144


def _sides(length: str, width: str) -> dict[str, object]:
    return {"length_in": length, "width_in": width}


def _strip(length: str, height: str) -> dict[str, object]:
    return {"length_in": length, "height_in": height}


def _coats(random: Random, job: DiaryJob) -> list[Coat]:
    area, day = job.sqft, job.started_on
    coats = []
    if job.purpose == "customer" and random.random() < 0.3:
        coats.append(Coat("primer", day, 9, (_oz("PRM-GRIP", area * Decimal("1.1")), *_sundries(area, discs=True))))
        day = _next_working(day)
    cans = max(Decimal("0.25"), (area / 28 * 4).quantize(Decimal(1)) / 4)
    base = (_oz(job.look.base, area * Decimal("2.2")), (job.look.spray, cans, "each"), *_sundries(area, discs=True))
    coats.append(Coat("base_coat", day, 10, base))
    day = _next_working(day)
    is_bar = "Bar" in job.title or "Coffee" in job.title
    coats.append(
        _resin_coat(random, job, "flood_coat", day, ("TBL-A", "TBL-B", 1) if is_bar else ("FLD-A", "FLD-B", 2))
    )
    if random.random() < 0.45 and job.purpose == "customer":
        day = _next_working(day)
        coats.append(_resin_coat(random, job, "flood_coat", day, ("FLD-A", "FLD-B", 2), coloured=False))
    if random.random() < 0.5 and job.purpose != "sample":
        day = _next_working(day)
        needs = (_oz("SAT-A", area * Decimal("0.96")), _oz("SAT-B", area * Decimal("0.24")), *_sundries(area))
        coats.append(Coat("top_coat", day, 14, needs))
    return coats


def _resin_coat(
    random: Random, job: DiaryJob, layer: str, day: date, system: tuple[str, str, int], *, coloured: bool = True
) -> Coat:
    part_a, part_b, ratio = system
    mixed = job.sqft * (Decimal("3.6") if coloured else Decimal("2.6")) * Decimal("1.12")
    share_b = mixed / (ratio + 1)
    needs = [_oz(part_a, share_b * ratio), _oz(part_b, share_b)]
    if coloured:
        for code, per_sqft in job.look.additives:
            amount, unit = per_sqft.split()
            drawn = Decimal(amount) * job.sqft * Decimal(random.randint(90, 112)) / 100
            needs.append((code, max(drawn.quantize(Decimal("0.1")), Decimal("0.5")), unit))
        needs.append(_oz("ALC-IPA", job.sqft * Decimal("0.12")))
    wasted = (_oz(part_a, Decimal(4)), _oz(part_b, Decimal(4) / ratio)) if random.random() < 0.08 else ()
    leftover = Decimal(random.choice([2, 3, 5])) if random.random() < 0.25 else None
    return Coat(layer, day, 11, (*needs, *_sundries(job.sqft, cups=2)), wasted=wasted, leftover=leftover)


def _sundries(area: Decimal, *, cups: int = 0, discs: bool = False) -> tuple[tuple[str, Decimal, str], ...]:
    used = [
        ("GLV-NIT", Decimal(2), "each"),
        ("TAP-EDGE", (area * Decimal("0.9")).quantize(Decimal(1)) + 4, "ft"),
        ("SOL-CLEAN", Decimal(2), "fl_oz"),
    ]
    if cups:
        used += [("CUP-QT", Decimal(cups), "each"), ("STK-MIX", Decimal(cups), "each")]
    if discs:
        used.append(("DSC-220", max(Decimal(1), (area / 14).quantize(Decimal(1))), "each"))
    return tuple(used)


def _oz(code: str, amount: Decimal) -> tuple[str, Decimal, str]:
    """Fluid ounces as a cup shows them: to the half, never nothing."""
    return code, max(Decimal("0.5"), (amount * 2).quantize(Decimal(1)) / 2), "fl_oz"


def _next_working(day: date) -> date:
    day += timedelta(days=1)
    while day.weekday() >= 5:
        day += timedelta(days=1)
    return day
