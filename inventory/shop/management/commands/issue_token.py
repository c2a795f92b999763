"""manage.py issue_token USERNAME [--role owner|crew|viewer] [--replace]"""

from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.db import transaction
from rest_framework.authtoken.models import Token

from inventory.rest.problems import Problem, Role
from inventory.shop import actions
from inventory.shop.models import Person


class Command(BaseCommand):
    help = "Print the token with which a person's scripts sign in; where there is none, make it, and the person."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("username")
        parser.add_argument("--role", choices=Role.values, help="of a new person; viewer unless said")
        parser.add_argument("--replace", action="store_true", help="end the token there is and make another")

    def handle(self, *args: Any, username: str, role: str | None, replace: bool, **options: Any) -> None:
        try:
            self.stdout.write(token_for(username, role=role, replace=replace))
        except Problem as problem:
            raise CommandError(problem.detail) from problem


@transaction.atomic
def token_for(username: str, *, role: str | None, replace: bool) -> str:
    person = Person.objects.filter(username=username).first()
    if person is None:
        person = actions.add_person(username=username, name=username, role=role or Role.VIEWER, by=None)
    elif role is not None and role != person.role:
        raise CommandError(
            f"{username} is there already, as {person.role}. Leave --role out; an owner changes roles under People."
        )
    token = None if replace else Token.objects.filter(user=person).first()
    return str(token.key) if token and person.is_active else actions.issue_token(person=person, by=None)
