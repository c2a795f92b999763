"""An invented shop's whole history, of any length, consistent to the last ten-thousandth; the same for the same size.

Every pour takes 12 lines. Whatever happens takes a whole portion, and a lot's price is so much a portion, so that every
share of a lot's money comes out even: the figures here are the ones that the app's own arithmetic would have posted.
"""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta

from inventory.catalog.models import MaterialKind
from inventory.jobs.models import Purpose
from inventory.pours.models import Layer
from inventory.stock.models import Kind, Origin
from tests.benchmarks.loading import as_text
from tests.benchmarks.sheets import Sheets

LINES = 12
DAYS = 4 * 365
PORTION = 40_000_000  # 40 of the stock unit: what one line takes
USES_OF_A_LOT = 100
USES_OF_THE_BIG_LOT = 10_000
MATERIALS = 24
BIG_MATERIAL = MATERIALS + 1
MATCHED = 3  # the material of which a job should see one lot
BLENDED = range(1, 7)  # materials that are also mixed in the shop
POURS_OF_A_JOB = 4
FRESH_LOTS = 4
FRESH_PORTIONS = 20_000
DENSITY = 1_100_000  # 1.1 g/mL
PLACE = 1
PERSON = 1
LAYERS = [Layer.PRIMER, Layer.BASE_COAT, Layer.FLOOD_COAT, Layer.TOP_COAT]
KINDS = [kind for kind in MaterialKind if kind != MaterialKind.CONSUMABLE]


@dataclass(slots=True)
class LotNow:
    """A lot as it stands. price: ten-thousandths a portion. issues: every one so far, if it is to be charged late."""

    id: int
    material: int
    left: int
    price: int
    depth: int = 0
    received_on: str = ""
    delivery: int = 0
    issues: list[tuple[int, str, int, str, str, int | None]] | None = None


@dataclass(slots=True)
class Facts:
    """What a measurement needs to know of the world. deep_job: its tops hold a mix of mixes."""

    movements: int
    pours: int
    jobs: int
    lots: int
    big_lot: int
    deep_job: int
    last_day: date


@dataclass
class World:
    """The history, told day by day into the sheets. movements: how many there are to be, a few more or less."""

    sheets: Sheets
    movements: int
    last_day: date
    shelf: dict[int, deque[LotNow]] = field(default_factory=dict)
    serial: dict[int, int] = field(default_factory=dict)
    balances: list[LotNow] = field(default_factory=list)
    last_blend: LotNow | None = None
    charged: list[LotNow] = field(default_factory=list)
    count: dict[str, int] = field(default_factory=dict)
    deepest: int = 0
    deep_job: int = 0

    def next(self, noun: str) -> int:
        self.count[noun] = self.count.get(noun, 0) + 1
        return self.count[noun]

    # The history

    def tell(self) -> Iterator[int]:
        """Write everything into the sheets; yields how many movements there are so far, for the caller to flush."""
        self.furnish()
        pours = max(POURS_OF_A_JOB, self.movements * 100 // (LINES * 102))
        self.days_of_a_job = 10 + POURS_OF_A_JOB * DAYS // pours
        first = self.day = self.last_day - timedelta(days=DAYS)
        self.big = self.receive(BIG_MATERIAL, USES_OF_THE_BIG_LOT * 2)
        every = max(1, pours // USES_OF_THE_BIG_LOT)
        for pour in range(1, pours + 1):
            self.day = first + timedelta(days=pour * (DAYS - 1) // (pours + 1))
            self.pour(pour, uses_the_big_lot=pour % every == 0)
            if pour % 2000 == 0:
                yield self.count["movement"]
        self.day = self.last_day
        self.charge_late()
        self.clear_and_fill_the_shelf()
        for lot in self.balances:
            self.sheets.balance.add(lot.id, PLACE, lot.left * PORTION, lot.left * lot.price)
        yield self.count["movement"]

    def facts(self) -> Facts:
        of = self.count
        return Facts(of["movement"], of["pour"], of["job"], of["lot"], self.big.id, self.deep_job, self.last_day)

    def furnish(self) -> None:
        sheets = self.sheets
        sheets.place.add(PLACE, PLACE, "Shop")
        sheets.supplier.add(1, 1, "Harbour Supply", 7)
        for material in range(1, MATERIALS + 1):
            name, kind = f"Material {material}", KINDS[material % len(KINDS)]
            sheets.material.add(
                material, material, f"M-{material}", name, kind, "ml", DENSITY, 1, True, material == MATCHED
            )
        name, kind = "Tape by the mile", MaterialKind.CONSUMABLE
        sheets.material.add(BIG_MATERIAL, BIG_MATERIAL, "BIG", name, kind, "ml", DENSITY, 1, True, False)

    # Pours and jobs

    def pour(self, pour: int, *, uses_the_big_lot: bool) -> None:
        sheets, day = self.sheets, as_text(self.day)
        job = self.job_of(pour)
        at = as_text(datetime.combine(self.day, time(8), UTC) + timedelta(minutes=pour % 500))
        self.next("pour")
        sheets.pour.add(pour, f"{pour:032x}", pour, LAYERS[pour % 4], PLACE, "completed", at, at, PERSON, at)
        for piece in self.pieces_under(pour, job):
            sheets.pour_piece.add(self.next("pour_piece"), pour, piece)
        lots = [
            self.take(BIG_MATERIAL if uses_the_big_lot and line == 5 else 1 + (pour * 5 + line) % MATERIALS)
            for line in range(LINES)
        ]  # what has to be received for it is posted before
        posting = self.posting(Kind.USED, at)
        for line, lot in enumerate(lots):
            self.use(pour, line, posting, lot, at, day)
        if max(lot.depth for lot in lots) >= self.deepest:
            self.deepest, self.deep_job = max(lot.depth for lot in lots), job

    def use(self, pour: int, line: int, posting: int, lot: LotNow, at: str, day: str) -> None:
        kind = "wasted" if line == LINES - 1 else "used"
        movement = self.move(posting, kind, lot, -1, at, day, cause=pour)
        self.sheets.usage.add(
            movement, pour, line, lot.material, lot.id, PLACE, movement, PORTION, "40", "ml", DENSITY,
            line == LINES - 1, "typed", "assumed", "usable",
        )  # fmt: skip

    def job_of(self, pour: int) -> int:
        """The job that a pour belongs to, with its pieces, made when its first pour comes."""
        job = (pour - 1) // POURS_OF_A_JOB + 1
        if job > self.count.get("job", 0):
            self.next("job")
            if job % 5 == 1:
                customer = self.next("customer")
                self.sheets.customer.add(customer, customer, f"Customer {customer}")
            finished = self.day + timedelta(days=self.days_of_a_job)
            purpose = Purpose.SAMPLE if job % 20 == 0 else Purpose.CUSTOMER
            done = as_text(finished) if finished < self.last_day else None
            self.sheets.job.add(job, job, self.count["customer"], f"Kitchen {job}", purpose, done)
            for name in ("island", "counter"):
                piece = self.next("piece")
                area = (20 + piece % 30) * 1_000_000
                self.sheets.piece.add(piece, f"{piece:032x}", piece, job, name, area, area)
        return job

    def pieces_under(self, pour: int, job: int) -> tuple[int, ...]:
        """Both tops of the job; every fiftieth pour also covers one of the job before."""
        own = (2 * job - 1, 2 * job)
        return (*own, 2 * job - 2) if pour % 50 == 0 and job > 1 else own

    # Lots

    def take(self, material: int) -> LotNow:
        """The lot that the next portion of a material comes from."""
        if material == BIG_MATERIAL:
            return self.big
        shelf = self.shelf.setdefault(material, deque())
        while shelf and not shelf[0].left:
            shelf.popleft()
        if not shelf:
            self.restock(material)
        return shelf[0]

    def restock(self, material: int) -> None:
        serial = self.serial[material] = self.serial.get(material, 0) + 1
        shelf = self.shelf[material]
        lot = self.receive(material, USES_OF_A_LOT)
        turn = serial + material
        if turn % 8 == 3:
            shelf.append(self.open(lot, USES_OF_A_LOT // 2))
        elif turn % 5 == 2 and material in BLENDED:
            shelf.append(self.blend(lot))
        elif turn % 7 == 1 and len(self.charged) < min(20, 1 + self.movements // 10_000):
            lot.issues = []
            self.charged.append(lot)
        shelf.append(lot)

    def receive(self, material: int, portions: int, use_by: date | None = None) -> LotNow:
        """A delivery of one lot at the beginning of the day."""
        price = 64 * (300 + (self.count.get("lot", 0) * 7 + material) % 200)
        midnight, day = as_text(datetime.combine(self.day, time.min, UTC)), as_text(self.day)
        lot = self.lot(material, portions, price, Origin.DELIVERY, midnight, use_by=use_by)
        posting = self.posting(Kind.RECEIVED, midnight)
        self.move(posting, "received", lot, portions, midnight, day)
        delivery = lot.delivery = self.next("delivery")
        self.sheets.delivery.add(delivery, delivery, 1, day, PLACE, PERSON, midnight, posting)
        cost = portions * price
        self.sheets.delivery_line.add(
            delivery, delivery, 0, material, lot.id, portions * PORTION, str(portions * 40), "ml", cost, cost
        )
        return lot

    def open(self, lot: LotNow, portions: int) -> LotNow:
        """Half of a lot as a container opened that day."""
        at = as_text(datetime.combine(self.day, time(6), UTC))
        child = self.lot(lot.material, portions, lot.price, Origin.OPENED, at, opened_from=lot.id)
        posting = self.posting(Kind.OPENED, at)
        day = as_text(self.day)
        self.move(posting, "opened", lot, -portions, at, day, into_lot=child.id)
        self.move(posting, "opened", child, portions, at, day)
        return child

    def blend(self, lot: LotNow) -> LotNow:
        """A house mix of a new lot, of the mix before it (three deep at most), and now and then of the big lot."""
        inputs, before = [(lot, 20)], self.last_blend
        if self.count.get("blend", 0) % 3 == 0:
            inputs.append((self.big, 20))
        elif before is not None and before.left > 20 and before.depth < 3:  # a line may be about to take one
            inputs.append((before, 20))
        portions = sum(part for _, part in inputs)
        price = sum(source.price * part for source, part in inputs) // portions
        at, day = as_text(datetime.combine(self.day, time(7), UTC)), as_text(self.day)
        mixed = self.lot(lot.material, portions, price, Origin.BLEND, at)
        mixed.depth = 1 + max(source.depth for source, _ in inputs)
        posting = self.posting(Kind.BLENDED, at)
        for source, part in inputs:
            self.move(posting, "blended", source, -part, at, day, into_lot=mixed.id)
        self.move(posting, "blended", mixed, portions, at, day)
        blend = self.next("blend")
        self.sheets.blend.add(blend, blend, mixed.id, at, posting, PERSON)
        self.last_blend = mixed
        return mixed

    def lot(
        self, material: int, portions: int, price: int, origin: Origin, at: str,
        *, opened_from: int | None = None, use_by: date | None = None,
    ) -> LotNow:  # fmt: skip
        number, day = self.next("lot"), as_text(self.day)
        opened_on = day if origin is Origin.OPENED else None
        good_until = as_text(use_by) if use_by else None
        lot = LotNow(number, material, 0, price, received_on=day)
        self.balances.append(lot)
        self.sheets.lot.add(
            number, f"{number:032x}", number, material, f"H-{number}", origin, opened_from, day, at, good_until,
            opened_on, good_until,
        )  # fmt: skip
        return lot

    # Money and the end of the story

    def charge_late(self) -> None:
        """Freight that came months later on some lots: each lot gets dearer, and so does everything it became."""
        now = as_text(datetime.combine(self.last_day, time(1), UTC))
        for lot in self.charged:
            dearer = 64
            taken = len(lot.issues or ())
            posting = self.posting(Kind.CHARGED, now, charged_on=as_text(self.last_day))
            received_at = f"{lot.received_on} 00:00:00"
            self.money(posting, "charged", lot, dearer * (taken + lot.left), received_at, lot.received_on)
            for movement, kind, portions, at, day, cause in lot.issues or ():
                self.money(posting, kind, lot, -dearer * portions, at, day, corrects=movement, cause=cause)
            lot.price += dearer
            lot.issues = None
            charge, delivery, amount = self.next("charge"), lot.delivery, dearer * (taken + lot.left)
            self.sheets.charge.add(charge, delivery, "freight", amount, "value", as_text(self.last_day), posting)
            self.sheets.charge_share.add(charge, charge, delivery, amount)

    def clear_and_fill_the_shelf(self) -> None:
        """What is left of the old lots is thrown away, and the shelf is full again: the same at every size."""
        at = as_text(datetime.combine(self.last_day, time(2), UTC))
        for lot in self.balances:
            if lot.left and lot is not self.big:
                posting = self.posting(Kind.WRITTEN_OFF, at)
                self.move(posting, "written_off", lot, -lot.left, at, as_text(self.last_day))
        for material in range(1, MATERIALS + 1):
            for nth in range(FRESH_LOTS):
                self.receive(material, FRESH_PORTIONS, use_by=self.last_day + timedelta(days=10 + 60 * nth))

    def posting(self, kind: Kind, at: str, charged_on: str | None = None) -> int:
        posting = self.next("posting")
        self.sheets.posting.add(posting, f"{posting:032x}", kind.value, PERSON, at, charged_on)
        return posting

    def move(
        self, posting: int, kind: str, lot: LotNow, portions: int, at: str, day: str,
        *, cause: int | None = None, into_lot: int | None = None,
    ) -> int:  # fmt: skip
        """One line of whole portions; money goes along at the lot's price."""
        movement = self.next("movement")
        lot.left += portions
        if lot.left < 0:
            raise RuntimeError(f"lot {lot.id} would be below zero")
        self.sheets.movement.add(
            movement, posting, kind, lot.id, lot.material, PLACE, portions * PORTION, portions * lot.price, at, day,
            None, into_lot, cause,
        )  # fmt: skip
        if lot.issues is not None and portions < 0:
            lot.issues.append((movement, kind, -portions, at, day, cause))
        return movement

    def money(
        self, posting: int, kind: str, lot: LotNow, value: int, at: str, day: str,
        *, corrects: int | None = None, cause: int | None = None,
    ) -> None:  # fmt: skip
        movement = self.next("movement")
        self.sheets.movement.add(
            movement, posting, kind, lot.id, lot.material, PLACE, 0, value, at, day, corrects, None, cause
        )
