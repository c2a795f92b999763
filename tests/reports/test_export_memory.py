"""In and out as CSV and XLSX: however many lines, in bounded memory and the same SQL."""

import csv
import io
import tracemalloc
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from openpyxl import load_workbook
from rest_framework.authtoken.models import Token
from rest_framework.test import APIClient

from inventory.shop.models import Person
from inventory.stock.models import Movement
from tests.benchmarks.building import build
from tests.benchmarks.world import PERSON

MOVEMENTS = 14_000
SLACK = 600_000  # bytes; the lines that are left out of the shorter export would fill some 6 MB


@pytest.fixture
def exported(transactional_db: None, settings: Any) -> "Exported":
    settings.ALLOWED_HOSTS = ["testserver"]
    build(MOVEMENTS)
    return Exported()


class Exported:
    """A shop with a long history, and its lines as files. few: how many the shorter export has."""

    def __init__(self) -> None:
        self.client = APIClient()
        token = Token.objects.create(user=Person.objects.get(pk=PERSON))
        self.client.credentials(HTTP_AUTHORIZATION=f"Token {token.key}")
        self.many = Movement.objects.count()
        days = Movement.objects.order_by("happened_on").values_list("happened_on", flat=True)
        last = days[self.many // 3]
        self.short = f"&happened_to={last.isoformat()}"
        self.few = Movement.objects.filter(happened_on__lte=last).count()

    def file(self, form: str, narrowed: str = "") -> bytes:
        answer: Any = self.client.get(f"/api/movements/?format={form}{narrowed}")
        assert answer.status_code == 200
        return b"".join(answer.streaming_content)

    def peak(self, form: str, narrowed: str = "") -> int:
        """The most bytes that Python held while the file was made and sent, chunk by chunk."""
        tracemalloc.start()
        answer: Any = self.client.get(f"/api/movements/?format={form}{narrowed}")
        for _ in answer.streaming_content:
            pass
        _, most = tracemalloc.get_traced_memory()
        tracemalloc.stop()
        return most

    def statements(self, form: str, narrowed: str = "") -> int:
        with CaptureQueriesContext(connection) as captured:
            self.file(form, narrowed)
        return len(captured)


def test_an_export_of_any_length_has_every_line_in_bounded_memory_and_constant_sql(exported: Exported) -> None:
    assert 4_000 < exported.few < exported.many // 2

    rows = list(csv.reader(io.StringIO(exported.file("csv").decode("utf-8-sig"), newline="")))
    assert len(rows) == exported.many + 1
    sheet = load_workbook(io.BytesIO(exported.file("xlsx", exported.short)), read_only=True).active
    assert sheet is not None
    assert sum(1 for _ in sheet.iter_rows()) == exported.few + 1

    for form in ("csv", "xlsx"):
        assert exported.peak(form) < exported.peak(form, exported.short) + SLACK
        assert exported.statements(form) == exported.statements(form, exported.short) <= 9
