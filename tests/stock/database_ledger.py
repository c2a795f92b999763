"""The real actions on a database, behind what the random shop asks of a ledger."""

from datetime import UTC, datetime, timedelta
from typing import Any

from inventory.shop.fields import to_decimal, to_whole
from inventory.stock.actions import (
    Counted,
    Input,
    blend,
    count_place,
    give_away,
    move,
    open_container,
    return_goods,
    reverse_posting,
    undo_blend,
    undo_count,
    undo_opening,
    write_off,
)
from inventory.stock.models import Balance, Blend, Kind, Lot, Movement, Place, Posting, StockCount
from inventory.stock.problems import AlreadyUndone, NotEnoughStock, NotWhole
from tests.ledger_oracle import Spot
from tests.random_shop import PLACES, Refused
from tests.stock.shelf import ZONE, Shelf

START = datetime(2026, 1, 1, 6, tzinfo=UTC)  # midnight of the shop


def moment(minutes: int) -> datetime:
    return START + timedelta(minutes=minutes)


class DatabaseLedger:
    def __init__(self, shelf: Shelf) -> None:
        self.shelf = shelf
        self.places = [shelf.place, shelf.van, Place.objects.create(number=901, name="Site")]
        assert len(self.places) == len(PLACES)
        self.lots: dict[int, Lot] = {}
        self.back: dict[int, int] = {}

    def receive(self, lot: int, place: int, quantity: int, money: int, at: int, containers: int) -> None:
        made = self.shelf.lot(
            str(to_decimal(quantity, 6)),
            str(to_decimal(money, 4)),
            on=moment(at).astimezone(ZONE).date(),
            place=self.places[place],
            containers=containers,
        )
        self.keep(lot, made)

    def issue(self, spot: Spot, quantity: int, at: int, kind: str) -> int:
        lot, place = self.lots[spot[0]], self.places[spot[1]]
        amount = to_decimal(quantity, 6)
        common: dict[str, Any] = {
            "lot": lot,
            "quantity": amount,
            "place": place,
            "happened_at": moment(at),
            "by": self.shelf.by,
            "reason": "At random",
        }
        if kind == "written_off":
            return self.refusing(lambda: write_off(**common)).id
        if kind == "returned":
            return self.refusing(lambda: return_goods(**common, to="supplier")).id
        if kind == "given":
            return self.refusing(lambda: give_away(**common)).id
        return self.refusing(
            lambda: self.shelf.use(lot, str(amount), at=moment(at), kind=Kind(kind), place=place, cause=at)
        ).id

    def take_back(self, issue: int) -> None:
        posting = Posting.objects.get(pk=issue)
        if posting.kind in (Kind.USED, Kind.WASTED):
            self.refusing(lambda: self.shelf.take_back_posting(issue))
        else:
            self.reverse(issue)

    def move(self, spot: Spot, to: int, quantity: int, at: int) -> int:
        posted = self.refusing(
            lambda: move(
                lot=self.lots[spot[0]],
                origin=self.places[spot[1]],
                to=self.places[to],
                quantity=to_decimal(quantity, 6),
                happened_at=moment(at),
                by=self.shelf.by,
            )
        )
        return posted.id

    def move_back(self, move: int) -> None:
        self.reverse(move)

    def open(self, lot: int, child: int, place: int, quantity: int, at: int) -> None:
        opened = self.refusing(
            lambda: open_container(
                lot=self.lots[lot], place=self.places[place], happened_at=moment(at), by=self.shelf.by
            )
        )
        assert to_whole(Balance.objects.get(lot=opened).quantity, 6) == quantity
        self.keep(child, opened)

    def put_back(self, child: int) -> None:
        lot = self.lots[child]
        self.refusing(lambda: undo_opening(lot=lot, reason="Not opened", by=self.shelf.by))

    def blend(self, lot: int, place: int, inputs: list[tuple[Spot, int]], at: int) -> None:
        made = self.refusing(
            lambda: blend(
                material=self.shelf.material,
                inputs=[Input(self.lots[spot[0]], to_decimal(quantity, 6)) for spot, quantity in inputs],
                place=self.places[place],
                made_at=moment(at),
                by=self.shelf.by,
            )
        )
        self.keep(lot, made.lot)

    def unblend(self, lot: int) -> None:
        made = Blend.objects.get(lot=self.lots[lot])
        self.refusing(lambda: undo_blend(blend=made, reason="Not mixed", by=self.shelf.by))

    def charge(self, lot: int, money: int) -> None:
        if money:
            self.shelf.charge(self.lots[lot], str(to_decimal(money, 4)))

    def count(self, spot: Spot, found: int, at: int) -> int:
        lines = [Counted(self.lots[spot[0]], to_decimal(found, 6))]
        place = self.places[spot[1]]
        counted = self.refusing(lambda: count_place(place=place, counted_at=moment(at), lines=lines, by=self.shelf.by))
        return counted.pk

    def uncount(self, count: int) -> None:
        counted = StockCount.objects.get(pk=count)
        self.refusing(lambda: undo_count(count=counted, reason="Not counted", by=self.shelf.by))

    def balances(self) -> dict[Spot, tuple[int, int]]:
        return {
            self.spot(lot, place): (to_whole(quantity, 6), to_whole(value, 4))
            for lot, place, quantity, value in Balance.objects.values_list("lot", "place", "quantity", "value")
        }

    def history(self) -> dict[Spot, list[tuple[int, int]]]:
        found: dict[Spot, list[tuple[int, int]]] = {}
        for lot, place, at, quantity in Movement.objects.values_list("lot", "place", "happened_at", "quantity"):
            minutes = (at - START) // timedelta(minutes=1)
            found.setdefault(self.spot(lot, place), []).append((minutes, to_whole(quantity, 6)))
        return found

    def keep(self, key: int, lot: Lot) -> None:
        self.lots[key] = lot
        self.back[lot.pk] = key

    def spot(self, lot: int, place: int) -> Spot:
        return self.back[lot], [known.pk for known in self.places].index(place)

    def reverse(self, posting: int) -> None:
        row = Posting.objects.get(pk=posting)
        self.refusing(lambda: reverse_posting(posting=row, reason="Mistake", by=self.shelf.by))

    def refusing(self, act: Any) -> Any:
        try:
            return act()
        except (NotEnoughStock, NotWhole, AlreadyUndone) as refusal:
            raise Refused(refusal.detail) from refusal
