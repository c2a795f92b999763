"""Resin systems: parts that cure together, in a ratio that the maker's data sheet gives."""

from collections.abc import Collection, Mapping, Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass
from decimal import Decimal
from string import ascii_uppercase
from typing import Any, TypedDict, Unpack

from django.db import transaction

from inventory.catalog.actions.shelving import named_once, refuse_archived
from inventory.catalog.models import Material, MaterialKind, ResinPart, ResinSystem, StockUnit
from inventory.shop.change_log import log_added, log_changes
from inventory.shop.editing import edit, lock_for_edit, next_version
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_field, bad_fields

NEVER_A_PART = {MaterialKind.SPRAY_CAN, MaterialKind.CONSUMABLE}
POURABLE_UNITS = {StockUnit.MILLILITRES, StockUnit.GRAMS}


@dataclass(frozen=True)
class PartGiven:
    """One part of a system: its role, A, B, …, and what it is."""

    role: str
    material: Material


Ratio = Mapping[str, Decimal]
"""The share of each part by its role, in any scale: 2 and 1, or 100 and 50."""


class MixFields(TypedDict, total=False):
    """What is mixed, and in which ratio: as the data sheet gives it by volume, by mass, or both; None for neither."""

    parts: Sequence[PartGiven]
    ratio_by_volume: Ratio | None
    ratio_by_mass: Ratio | None


class ResinSystemFields(TypedDict, total=False):
    """Figures of the maker's data sheet. Temperatures in °C, windows in hours, the layer in inches, the bucket in mL.

    The pot life holds for `pot_life_mass_g` of mixed resin that starts at `pot_life_at_c`.
    """

    name: str
    tolerance_percent: Decimal | None
    pot_life_minutes: int | None
    pot_life_mass_g: Decimal | None
    pot_life_at_c: Decimal | None
    working_minutes: int | None
    min_temp_c: Decimal | None
    max_temp_c: Decimal | None
    max_humidity_percent: Decimal | None
    max_layer_in: Decimal | None
    recoat_tacky_from_h: Decimal | None
    recoat_tacky_to_h: Decimal | None
    recoat_sanded_from_h: Decimal | None
    recoat_sanded_to_h: Decimal | None
    max_bucket_ml: Decimal | None
    max_colourant_percent: Decimal | None
    paint_dry_h: Decimal | None


LOGGED = tuple(ResinSystemFields.__annotations__)


@transaction.atomic
def add_resin_system(
    *,
    parts: Sequence[PartGiven],
    ratio_by_volume: Ratio | None = None,
    ratio_by_mass: Ratio | None = None,
    by: Person,
    **fields: Unpack[ResinSystemFields],
) -> ResinSystem:
    """Put a resin system on the list.

    Raises BadBody for a name that is taken, and for parts, ratios or figures that cannot be: see `refuse_odd_parts`,
    `refuse_odd_ratios` and `refuse_odd_figures`. Ratios that disagree are no error, but `queries.ratio_warnings`.
    """
    system = ResinSystem(**fields)
    refuse_odd_figures(system)
    rows = part_rows(system, {"parts": parts, "ratio_by_volume": ratio_by_volume, "ratio_by_mass": ratio_by_mass})
    with taken_name(system.name):
        system.number = next_number("resin_system")
        system.save(force_insert=True)
    ResinPart.objects.bulk_create(rows)
    log_added(record=system, by=by)
    return system


@transaction.atomic
def change_resin_system(
    *, system: ResinSystem, by: Person, mix: MixFields | None = None, **fields: Unpack[ResinSystemFields]
) -> ResinSystem:
    """Change a resin system. Of `mix` only what is in it changes. Raises as `add_resin_system`."""
    locked = lock_for_edit(system)
    was = locked.version
    refuse_odd_figures(changed_copy(locked, fields))
    with taken_name(fields.get("name", locked.name)):
        locked = edit(locked, fields, by=by, logged=LOGGED)
    differs = bool(mix) and replace_parts(locked, mix or {}, by=by)
    return next_version(locked) if differs and locked.version == was else locked


def changed_copy(system: ResinSystem, fields: ResinSystemFields) -> ResinSystem:
    return ResinSystem(**{name: getattr(system, name) for name in LOGGED} | fields)


def replace_parts(system: ResinSystem, mix: MixFields, *, by: Person) -> bool:
    """Make these the parts and ratios, log what they were; returns whether anything differed."""
    old = list(system.parts.select_related("material"))
    kept: MixFields = {
        "parts": [PartGiven(row.role, row.material) for row in old],
        "ratio_by_volume": ratio_of(old, "by_volume"),
        "ratio_by_mass": ratio_of(old, "by_mass"),
    }
    rows = part_rows(system, {**kept, **mix}, already_in={row.material_id for row in old})
    if [row_kept(row) for row in old] == [row_kept(row) for row in rows]:
        return False
    system.parts.all().delete()
    ResinPart.objects.bulk_create(rows)
    log_changes(record=system, changes={"parts": (in_words(old), in_words(rows))}, by=by)
    return True


def ratio_of(rows: Sequence[ResinPart], column: str) -> Ratio | None:
    shares = {row.role: getattr(row, column) for row in rows if getattr(row, column) is not None}
    return shares or None


def part_rows(system: ResinSystem, mix: MixFields, *, already_in: Collection[int] = ()) -> list[ResinPart]:
    """The rows of a system's parts in order of role, checked. already_in: materials that it has, archived or not."""
    parts = mix["parts"]
    refuse_odd_parts(parts)
    for index, part in enumerate(parts):
        if part.material.pk not in already_in:
            refuse_archived(part.material, pointer=f"/parts/{index}/material")
    refuse_odd_ratios(parts, mix)
    by_volume, by_mass = mix.get("ratio_by_volume") or {}, mix.get("ratio_by_mass") or {}
    return [
        ResinPart(
            system=system,
            role=part.role,
            material=part.material,
            by_volume=by_volume.get(part.role),
            by_mass=by_mass.get(part.role),
        )
        for part in sorted(parts, key=lambda part: part.role)
    ]


def refuse_odd_parts(parts: Sequence[PartGiven]) -> None:
    """Raise BadBody unless there are at least two parts, called A, B, … without a gap, each a material of its own.

    Among them is a resin and a hardener; a further part may be any liquid, paste or powder. Each is kept in mL or g,
    so that it can be measured out.
    """
    if len(parts) < 2:
        raise bad_field("/parts", "A resin system has two parts at least, A and B.")
    if sorted(part.role for part in parts) != list(ascii_uppercase[: len(parts)]):
        raise bad_field("/parts", f"Call the parts {', '.join(ascii_uppercase[: len(parts)])}, each once.")
    refuse_odd_materials(parts)


def refuse_odd_ratios(parts: Sequence[PartGiven], mix: MixFields) -> None:
    """Raise BadBody unless there is a ratio, and each that there is has a share above 0 for every part and no other."""
    roles = {part.role for part in parts}
    given = {"/ratio_by_volume": mix.get("ratio_by_volume"), "/ratio_by_mass": mix.get("ratio_by_mass")}
    if not any(given.values()):
        raise bad_field("/ratio_by_volume", "Give the mix ratio from the data sheet, by volume or by mass.")
    for pointer, ratio in given.items():
        if ratio and (set(ratio) != roles or any(share <= 0 for share in ratio.values())):
            raise bad_field(pointer, f"Give each of the parts {', '.join(sorted(roles))} its share, above 0.")


def refuse_odd_materials(parts: Sequence[PartGiven]) -> None:
    errors = []
    seen: set[int] = set()
    for index, part in enumerate(parts):
        where, material = f"/parts/{index}/material", part.material
        if material.pk in seen:
            errors.append((where, f"{material} is another part already. Each part is a material of its own."))
        if material.kind in NEVER_A_PART:
            errors.append((where, f"{material} is a {material.get_kind_display().lower()} and no part of a resin."))
        elif material.stock_unit not in POURABLE_UNITS:
            errors.append((where, f"{material} is not kept in mL or g, so it cannot be measured out in a ratio."))
        seen.add(material.pk)
    kinds = {part.material.kind for part in parts}
    for kind in (MaterialKind.RESIN, MaterialKind.HARDENER):
        if not errors and kind not in kinds:
            errors.append(("/parts", f"None of the parts is a {kind.label.lower()}: set the kind of its material."))
    if errors:
        raise bad_fields(errors)


def refuse_odd_figures(system: ResinSystem) -> None:
    """Raise BadBody for a pot life that is not whole, and for bounds and windows that run backwards."""
    pot_life = (system.pot_life_minutes, system.pot_life_mass_g, system.pot_life_at_c)
    if any(figure is not None for figure in pot_life) and None in pot_life:
        raise bad_field(
            "/pot_life", "A pot life needs its minutes, and the mass in g and temperature in °C they hold for."
        )
    pairs = [
        ("/max_temp_c", system.min_temp_c, system.max_temp_c, "The highest temperature lies below the lowest."),
        ("/recoat_tacky_h", system.recoat_tacky_from_h, system.recoat_tacky_to_h, "The tacky window ends too soon."),
        (
            "/recoat_sanded_h",
            system.recoat_sanded_from_h,
            system.recoat_sanded_to_h,
            "The sanded window ends too soon.",
        ),
        (
            "/recoat_sanded_h",
            system.recoat_tacky_from_h,
            system.recoat_sanded_from_h,
            "The window after sanding opens before the tacky one does.",
        ),
    ]
    errors = [
        (pointer, f"{sentence} Check both figures on the data sheet.")
        for pointer, first, last, sentence in pairs
        if first is not None and last is not None and last < first
    ]
    if errors:
        raise bad_fields(errors)


def row_kept(row: ResinPart) -> tuple[Any, ...]:
    return row.role, row.material_id, row.by_volume, row.by_mass


def in_words(rows: Sequence[ResinPart]) -> str:
    return "; ".join(f"{row.role} {row.material}, by volume {row.by_volume}, by mass {row.by_mass}" for row in rows)


def taken_name(name: str) -> AbstractContextManager[None]:
    return named_once("/name", f"There is a resin system called {name} already. Choose another name.")
