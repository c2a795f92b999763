"""Fills an empty database with the invented shop: everything or nothing."""

from collections.abc import Callable
from datetime import date, timedelta
from decimal import Decimal
from random import Random

from django.db import transaction

from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import (
    ContentGiven,
    MeasureGiven,
    PartGiven,
    add_material,
    add_pack,
    add_resin_system,
    add_supplier,
)
from inventory.demo import names
from inventory.demo.diary import Coat, DiaryJob, write_diary
from inventory.demo.events import EVENTS, last_touches
from inventory.demo.keeper import Keeper
from inventory.demo.shelf import MATERIALS, PACKS, SYSTEMS
from inventory.jobs.actions import add_customer, finish_job, hand_over_job, make_job
from inventory.jobs.models import Job
from inventory.jobs.shapes import PieceDraft
from inventory.pours.actions import complete_pour, log_pour, plan_pour
from inventory.pours.entered import Account, Leftover, PieceShare, Plan
from inventory.shop.actions import add_person, set_up_shop
from inventory.shop.clock import today as shop_today
from inventory.stock.actions import add_place

SEED = 20_260
Progress = Callable[[int], object]


def unseen(_done: int) -> None:
    """Nobody watches the progress."""


@transaction.atomic
def fill(*, seed: int = SEED, today: date | None = None, progress: Progress = unseen) -> Keeper:
    """Make the demo shop in an empty database. The same seed and day make the same shop."""
    keeper = _open_shop(Random(seed), today)
    diary = write_diary(seed=seed, today=keeper.today)
    jobs = [(entry, _job(keeper, entry)) for entry in diary]
    coats = sorted(
        ((coat.day, coat.hour, number, coat) for number, entry in enumerate(diary) for coat in entry.coats),
        key=lambda row: row[:3],
    )
    events = sorted(EVENTS, key=lambda event: -event.days_ago)
    for day, _, number, coat in coats:
        while events and keeper.today - timedelta(days=events[0].days_ago) <= day:
            event = events.pop(0)
            event.act(keeper, keeper.today - timedelta(days=event.days_ago))
        _coat(keeper, jobs[number][1], coat)
        progress(1)
        _finish(keeper, jobs, before=day)
    _finish(keeper, jobs, before=keeper.today)
    for event in events:
        event.act(keeper, keeper.today - timedelta(days=event.days_ago))
    last_touches(keeper)
    return keeper


def _open_shop(random: Random, today: date | None) -> Keeper:
    username, name, _ = names.PEOPLE[0]
    owner = set_up_shop(
        owner_name=name,
        username=username,
        password=names.PASSWORD,
        name=names.SHOP_NAME,
        town=names.TOWN,
        time_zone=names.TIME_ZONE,
        currency=names.CURRENCY,
    )
    people = {username: owner}
    for username, name, role in names.PEOPLE[1:]:
        people[username] = add_person(username=username, name=name, role=role, password=names.PASSWORD, by=owner)
    keeper = Keeper(people=people, today=today or shop_today(), random=random)
    keeper.places = {name: add_place(name=name, by=owner) for name in names.PLACES}
    keeper.suppliers = {
        key: add_supplier(name=name, lead_time_days=days, by=owner) for key, name, days in names.SUPPLIERS
    }
    keeper.customers = {name: add_customer(name=name, by=owner) for name in [*names.CUSTOMERS, "The shop itself"]}
    _fill_catalogue(keeper)
    return keeper


def _fill_catalogue(keeper: Keeper) -> None:
    for stuff in MATERIALS:
        keeper.materials[stuff.code] = add_material(
            code=stuff.code,
            name=stuff.name,
            kind=stuff.kind,
            stock_unit=stuff.unit,
            density_g_per_ml=Decimal(stuff.density) if stuff.density else None,
            grams_per_tsp=Decimal(stuff.spoon) if stuff.spoon else None,
            shelf_life_days=stuff.shelf_life,
            open_life_days=stuff.open_life,
            tracks_lots=stuff.tracks_lots,
            single_lot_per_job=stuff.one_lot,
            hazard_codes=list(stuff.hazards),
            cautions=stuff.cautions,
            swatch=stuff.swatch,
            main_supplier=keeper.suppliers[stuff.supplier],
            measures=[MeasureGiven(name, parse_quantity(equals)) for name, equals in stuff.measures],
            by=keeper.owner,
        )
    for sold in PACKS:
        contents = [
            ContentGiven(keeper.materials[code], parse_quantity(quantity), Decimal(share) if share else None)
            for code, quantity, share in sold.contents
        ]
        keeper.packs[sold.key] = add_pack(
            supplier=keeper.suppliers[sold.supplier],
            name=sold.name,
            price=Decimal(sold.price),
            contents=contents,
            by=keeper.owner,
        )
    for name, parts, pot_life, working in SYSTEMS:
        add_resin_system(
            name=name,
            parts=[PartGiven(role, keeper.materials[code]) for role, code, _ in parts],
            ratio_by_volume={role: share for role, _, share in parts},
            pot_life_minutes=pot_life,
            pot_life_mass_g=Decimal(150),
            pot_life_at_c=Decimal(25),
            working_minutes=working,
            by=keeper.owner,
        )


def _job(keeper: Keeper, entry: DiaryJob) -> Job:
    last = entry.coats[-1].day
    return make_job(
        customer=keeper.customers[entry.customer],
        title=entry.title,
        purpose=entry.purpose,
        due_on=last + timedelta(days=7),
        pieces=[PieceDraft(name=name, measures=measures, count=count) for name, measures, count in entry.pieces],
        by=keeper.owner,
    )


def _coat(keeper: Keeper, job: Job, coat: Coat) -> None:
    """Plan what is still to come; of what is past, some was planned and some only logged."""
    keeper.stock_up([*coat.needs, *coat.wasted], min(coat.day, keeper.today))
    is_ahead = coat.day >= keeper.today
    by = keeper.pourer()
    plan = Plan(
        pieces=[PieceShare(piece.pk) for piece in job.pieces.all()],
        layer=coat.layer,
        place=keeper.places["Shop"].pk,
        planned_for=keeper.at(coat.day, coat.hour),
        people=[by.pk],
        usages=keeper.entered(coat.needs),
        note=coat.note,
    )
    if is_ahead:
        plan_pour(plan=plan, allow_short=True, by=by)
        return
    account = Account(
        usages=[*keeper.entered(coat.needs), *keeper.entered(coat.wasted, is_waste=True)],
        poured_at=keeper.at(coat.day, coat.hour),
        leftover=Leftover(keeper.typed(coat.leftover, "fl_oz")) if coat.leftover else None,
        conditions=_conditions(keeper, coat),
        ticks=_ticks(keeper, coat),
    )
    if keeper.random.random() < 0.5:
        log_pour(plan=plan, account=account, by=by)
    else:
        complete_pour(pour=plan_pour(plan=plan, allow_short=True, by=by), account=account, by=by)


def _conditions(keeper: Keeper, coat: Coat) -> dict[str, dict[str, object]]:
    """The shop's air: warmer and more humid in summer; now and then nobody looked."""
    if keeper.random.random() < 0.15:
        return {}
    summer = 1 - abs(coat.day.month - 7) / 6
    air = 67 + round(8 * summer) + keeper.random.randint(-2, 2)
    humidity = 42 + round(16 * summer) + keeper.random.randint(-6, 6)
    return {
        "air_temperature": {"value": str(air), "unit": "F", "provenance": "typed"},
        "humidity": {"value": str(humidity), "unit": "percent", "provenance": "typed"},
    }


def _ticks(keeper: Keeper, coat: Coat) -> dict[str, dict[str, object]]:
    done = {"gloves": True, "sanded": coat.layer != "primer", "wiped": True}
    if coat.layer == "flood_coat":
        done |= {"second_bucket": keeper.random.random() < 0.7, "torch": True}
    return {name: {"value": True, "provenance": "typed"} for name, was in done.items() if was}


def _finish(keeper: Keeper, jobs: list[tuple[DiaryJob, Job]], *, before: date) -> None:
    for entry, row in jobs:
        if entry.finished_on is None or entry.finished_on >= before or row.finished_on is not None:
            continue
        finish_job(job=row, finished_on=entry.finished_on, by=keeper.owner)
        row.refresh_from_db()
        if entry.purpose == "customer":
            handed = min(entry.finished_on + timedelta(days=3), keeper.today)
            hand_over_job(job=row, handed_over_on=handed, by=keeper.owner)
            row.refresh_from_db()
