"""Packs: what a supplier sells under one price."""

from collections.abc import Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, TypedDict, Unpack

from django.db import transaction

from inventory.calc.quantities import Typed
from inventory.catalog.actions.shelving import named_once, refuse_archived
from inventory.catalog.models import Material, Pack, PackContent, Supplier
from inventory.catalog.quantities import amount_as_typed, figures_of, stock_quantity
from inventory.shop.change_log import log_added, log_changes
from inventory.shop.editing import edit, lock_for_edit, next_version
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_field

HUNDRED = Decimal(100)


@dataclass(frozen=True)
class ContentGiven:
    """One content of a pack. cost_share_percent: its part of the pack's price, where the shop sets it."""

    material: Material
    quantity: Typed
    cost_share_percent: Decimal | None = None


class PackFields(TypedDict, total=False):
    """price: of one pack, in the shop's currency; None where nobody knows it yet."""

    supplier: Supplier
    name: str
    price: Decimal | None


@transaction.atomic
def add_pack(*, contents: Sequence[ContentGiven], by: Person, **fields: Unpack[PackFields]) -> Pack:
    """Put a pack on a supplier's list.

    Raises BadBody for a name the supplier has already, an archived supplier or material, no contents, one material
    twice, and cost shares that are not given for all or do not add up to 100; UnitMismatch for a quantity that does not
    lead to its material's stock unit.
    """
    refuse_archived(fields.get("supplier"), pointer="/supplier")
    pack = Pack(**fields)
    rows = content_rows(pack, contents)
    with taken_name(pack.name):
        pack.number = next_number("pack")
        pack.save(force_insert=True)
    PackContent.objects.bulk_create(rows)
    log_added(record=pack, by=by)
    return pack


@transaction.atomic
def change_pack(
    *,
    pack: Pack,
    by: Person,
    contents: Sequence[ContentGiven] | None = None,
    **fields: Unpack[PackFields],
) -> Pack:
    """Change a pack. `contents`, where given, replace those it has; deliveries of it stay as they were received.

    Raises as `add_pack`.
    """
    locked = lock_for_edit(pack)
    if "supplier" in fields and fields["supplier"].pk != locked.supplier_id:
        refuse_archived(fields["supplier"], pointer="/supplier")
    was = locked.version
    with taken_name(fields.get("name", locked.name)):
        locked = edit(locked, fields, by=by, logged=["price"])
    differs = contents is not None and replace_contents(locked, contents, by=by)
    return next_version(locked) if differs and locked.version == was else locked


def replace_contents(pack: Pack, contents: Sequence[ContentGiven], *, by: Person) -> bool:
    old = list(pack.contents.select_related("material"))
    rows = content_rows(pack, contents, already_in={row.material_id for row in old})
    if [kept_of(row) for row in old] == [kept_of(row) for row in rows]:
        return False
    pack.contents.all().delete()
    PackContent.objects.bulk_create(rows)
    log_changes(record=pack, changes={"contents": (in_words(old), in_words(rows))}, by=by)
    return True


def content_rows(
    pack: Pack, contents: Sequence[ContentGiven], *, already_in: set[int] | frozenset[int] = frozenset()
) -> list[PackContent]:
    if not contents:
        raise bad_field("/contents", "Say what is in the pack: a material and its quantity at least.")
    refuse_uneven_shares(contents)
    seen: set[int] = set()
    rows = []
    for index, content in enumerate(contents):
        where = f"/contents/{index}"
        if content.material.pk in seen:
            raise bad_field(f"{where}/material", f"{content.material} is in the pack once already. Add its amounts up.")
        if content.material.pk not in already_in:
            refuse_archived(content.material, pointer=f"{where}/material")
        seen.add(content.material.pk)
        rows.append(content_row(pack, content, pointer=f"{where}/quantity"))
    return rows


def content_row(pack: Pack, content: ContentGiven, *, pointer: str) -> PackContent:
    quantity = stock_quantity(content.quantity, material=content.material, pointer=pointer)
    if quantity == 0:
        raise bad_field(pointer, "A pack holds more than nothing of what is in it.")
    typed = figures_of(content.material).known(content.quantity)
    return PackContent(
        pack=pack,
        material=content.material,
        quantity=quantity,
        typed_amount=amount_as_typed(typed.amount),
        typed_unit=typed.unit,
        cost_share_percent=content.cost_share_percent,
    )


def refuse_uneven_shares(contents: Sequence[ContentGiven]) -> None:
    given = [content.cost_share_percent for content in contents if content.cost_share_percent is not None]
    if given and len(given) < len(contents):
        raise bad_field("/contents", "Give a cost share for each content, or for none of them.")
    if given and sum(given, Decimal(0)) != HUNDRED:
        total = sum(given, Decimal(0)).normalize()
        raise bad_field("/contents", f"The cost shares add up to {total:f} percent. Make them 100.")


def kept_of(row: PackContent) -> tuple[Any, ...]:
    return row.material_id, row.quantity, row.typed_amount, row.typed_unit, row.cost_share_percent


def in_words(rows: Sequence[PackContent]) -> str:
    return "; ".join(
        f"{row}, {row.cost_share_percent} % of the price" if row.cost_share_percent is not None else str(row)
        for row in rows
    )


def taken_name(name: str) -> AbstractContextManager[None]:
    return named_once("/name", f"This supplier has a pack called {name} already. Choose another name.")
