"""Answers that were given once, so that a retry gets them again."""

from django.conf import settings
from django.db import models


class IdempotencyKey(models.Model):
    """A key that a client sent with a POST, and the answer which the work gave.

    The row is inserted first in the work's own transaction and filled in last, so that a crash leaves both or neither.
    """

    person = models.ForeignKey(
        settings.AUTH_USER_MODEL,
        on_delete=models.CASCADE,
        related_name="+",
        db_index=False,  # the constraint has one
    )
    method = models.CharField(max_length=8)
    path = models.CharField(max_length=400)
    key = models.CharField(max_length=255)
    role = models.CharField(max_length=10, help_text="The person's role then: the answer shows what that role sees.")
    body_hash = models.CharField(max_length=64, help_text="SHA-256 of the body in canonical JSON.")
    status = models.PositiveSmallIntegerField(default=0)
    content_type = models.CharField(max_length=60, blank=True)
    answer = models.TextField(blank=True)
    created_at = models.DateTimeField(db_index=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["person", "method", "path", "key"], name="idempotency_key_is_used_once")
        ]

    def __str__(self) -> str:
        return f"{self.method} {self.path} {self.key}"
