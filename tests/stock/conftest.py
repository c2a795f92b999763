import pytest

from inventory.shop.models import Person
from tests.stock.shelf import Shelf


@pytest.fixture
def shelf(owner: Person) -> Shelf:
    return Shelf(owner)
