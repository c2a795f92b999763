"""The invented shop's keeper: looks at the shelf and buys what runs low, by the real actions."""

from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from fractions import Fraction
from random import Random

from django.db.models import Q, Sum

from inventory.calc.quantities import Typed, parse_quantity
from inventory.catalog.models import Material, Pack, Supplier
from inventory.catalog.quantities import figures_of
from inventory.demo.shelf import MATERIALS, PACKS, Sold
from inventory.jobs.models import Customer
from inventory.pours.entered import Entered
from inventory.purchasing.actions import ChargeGiven, ContentLabel, PackLine, receive_delivery
from inventory.purchasing.models import Delivery
from inventory.shop.clock import shop_zone
from inventory.shop.models import Person
from inventory.stock.actions import open_container
from inventory.stock.models import Balance, Lot, LotStatus, Place

PACK_OF = {content[0]: sold for sold in PACKS for content in sold.contents}
STUFF = {stuff.code: stuff for stuff in MATERIALS}


class Keeper:
    """Everything the demo has made so far, and the acts that need more than one call."""

    def __init__(self, *, people: dict[str, Person], today: date, random: Random) -> None:
        self.people = people
        self.today = today
        self.random = random
        self.zone = shop_zone()
        self.suppliers: dict[str, Supplier] = {}
        self.materials: dict[str, Material] = {}
        self.packs: dict[str, Pack] = {}
        self.places: dict[str, Place] = {}
        self.customers: dict[str, Customer] = {}
        self.deliveries: list[Delivery] = []
        self.bought = 0

    @property
    def owner(self) -> Person:
        return self.people["owner"]

    def pourer(self) -> Person:
        return self.random.choice([self.people["crew"], self.people["wren"], self.owner])

    def at(self, day: date, hour: int) -> datetime:
        return datetime.combine(day, time(hour, self.random.choice([0, 10, 20, 35, 50])), tzinfo=self.zone)

    def typed(self, amount: Decimal, unit: str) -> Typed:
        return Typed(Fraction(amount), unit)

    def entered(self, needs: Iterable[tuple[str, Decimal, str]], *, is_waste: bool = False) -> list[Entered]:
        reason = "Knocked over" if is_waste else ""
        ways = ["typed"] * 6 + ["weighed", "scanned", "assumed"]
        return [
            Entered(
                material=self.materials[code].pk,
                quantity=self.typed(amount, unit),
                is_waste=is_waste,
                reason=reason,
                provenance=self.random.choice(ways),
            )
            for code, amount, unit in needs
        ]

    def usable(self, day: date) -> dict[int, Decimal]:
        """What lies in the shop and is good on that day, by material, in stock units."""
        rows = (
            Balance.objects.filter(place=self.places["Shop"], lot__status=LotStatus.USABLE, quantity__gt=0)
            .filter(Q(lot__use_by__isnull=True) | Q(lot__use_by__gte=day))
            .values_list("lot__material")
            .annotate(there=Sum("quantity"))
        )
        return dict(rows)

    def stock_up(self, needs: Iterable[tuple[str, Decimal, str]], day: date) -> None:
        """Buy what the needs would take below a third of a pack, from each supplier in one delivery before the day."""
        there = self.usable(day)
        short: dict[str, dict[str, int]] = {}
        for code, amount, unit in needs:  # a code may come twice, so what is left is remembered
            sold = PACK_OF[code]
            content = next(content[1] for content in sold.contents if content[0] == code)
            material = self.materials[code]
            in_pack = figures_of(material).in_stock_unit(parse_quantity(content))
            left = there.get(material.pk, Decimal(0)) - figures_of(material).in_stock_unit(self.typed(amount, unit))
            there[material.pk] = left
            if left < in_pack / 4:
                count = max(2, int((in_pack * 2 - left) / in_pack) + 1)
                wanted = short.setdefault(sold.supplier, {})
                wanted[sold.key] = max(wanted.get(sold.key, 0), count)
        for supplier, packs in short.items():
            self.buy(supplier, packs, day - timedelta(days=self.random.randint(1, 4)))

    def buy(
        self,
        supplier: str,
        packs: dict[str, int],
        day: date,
        *,
        numbers: dict[str, str] | None = None,
        priced: bool = True,
    ) -> Delivery:
        """Receive packs at their list price, dearer by the month, with freight where the supplier charges it."""
        lines = [self.line(key, count, day, numbers or {}, priced=priced) for key, count in packs.items()]
        freight = Decimal(self.random.choice(["18.00", "24.50", "31.00"])) if supplier == "resin" else None
        delivery = receive_delivery(
            supplier=self.suppliers[supplier],
            received_on=day,
            lines=lines,
            place=self.places["Shop"],
            reference=f"{supplier[:2].upper()}-{4100 + self.bought}",
            charges=[ChargeGiven("freight", freight)] if freight and priced else [],
            by=self.owner if priced else self.people["crew"],
        )
        self.deliveries.append(delivery)
        self.open_first(delivery, day)
        return delivery

    def line(self, key: str, count: int, day: date, numbers: dict[str, str], *, priced: bool) -> PackLine:
        sold = next(sold for sold in PACKS if sold.key == key)
        months = (day - self.today).days / 30
        dearer = Decimal(1) + Decimal(round(months * 4)) / 1000
        price = (Decimal(sold.price) * count * dearer).quantize(Decimal("0.01"))
        return PackLine(
            pack=self.packs[key].pk,
            count=count,
            cost=price if priced else None,
            contents=self.labels(sold, day, numbers),
        )

    def labels(self, sold: Sold, day: date, numbers: dict[str, str]) -> list[ContentLabel]:
        self.bought += 1
        labels = []
        for code, _, _ in sold.contents:
            stuff = STUFF[code]
            has_number = stuff.tracks_lots and self.random.random() > 0.06
            number = numbers.get(code) or (f"{code[:2]}{code[-1]}-{day:%y%m}{self.bought:02d}" if has_number else "")
            made_on = day - timedelta(days=self.random.randint(20, 75)) if stuff.shelf_life else None
            labels.append(ContentLabel(material=self.materials[code].pk, lot_number=number, made_on=made_on))
        return labels

    def open_first(self, delivery: Delivery, day: date) -> None:
        """Resin and hardener are opened when they come, one container of each."""
        lots = Lot.objects.filter(delivery_line__delivery=delivery, material__kind__in=("resin", "hardener"))
        for lot in lots:
            if self.random.random() < 0.6:
                open_container(lot=lot, opened_on=day, by=self.people["crew"])
