"""What the records of the catalogue share."""

from typing import Any

from django.db import transaction
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog import actions
from inventory.rest.views import Changeable, Deletable, RecordView
from inventory.shop.acting import person_of


class OneNoun(Changeable, Deletable):
    """A record of the catalogue: read, changed, deleted while nothing names it."""

    def remove(self, record: Any) -> None:
        actions.delete_unused(record=record, by=person_of(self.request))


class Shelving(RecordView):
    """A record of the catalogue that is taken off the lists, or put back on them."""

    http_method_names = ["post"]

    def shelve(self, record: Any) -> Any:
        return actions.archive(record=record, by=person_of(self.request))

    @extend_schema(request=None)
    def post(self, request: Request, *args: Any, **kwargs: Any) -> Response:
        with transaction.atomic():
            record = self.shelve(self.get_locked())
        return self.answer_record(self.get_queryset().get(pk=record.pk))


class Unshelving(Shelving):
    """A record of the catalogue that is put back on the lists."""

    def shelve(self, record: Any) -> Any:
        return actions.unarchive(record=record, by=person_of(self.request))
