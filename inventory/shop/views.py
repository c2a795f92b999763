from typing import Any

from django.contrib.auth import login, logout, update_session_auth_hash
from django.middleware.csrf import get_token
from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import OpenApiResponse, extend_schema
from rest_framework.authentication import SessionAuthentication
from rest_framework.generics import get_object_or_404
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.rest.errors import MEDIA_TYPE
from inventory.rest.problems import Role
from inventory.rest.views import Changeable, ListView, TradeView
from inventory.shop import actions, queries
from inventory.shop.acting import person_of
from inventory.shop.filters import ChangeFilter, PersonFilter
from inventory.shop.models import Change, Person, Shop
from inventory.shop.serializers import (
    ChangeOut,
    OwnPasswordIn,
    PasswordIn,
    PersonChange,
    PersonIn,
    PersonOut,
    SessionOut,
    SetUpIn,
    ShopSettings,
    ShopSettingsOut,
    SignInIn,
    TokenOut,
)
from inventory.shop.sessions import sign_in

TOO_MANY_TRIES = OpenApiResponse(OpenApiTypes.OBJECT, "Too many wrong passwords: `retry_after_seconds` says how long.")


class OpenSession(TradeView):
    """What somebody who is not signed in may reach. A write needs the CSRF token that the answer's cookie holds."""

    is_open_to_all = True

    def answer_session(self, person: Person | None, status: int = 200) -> Response:
        get_token(self.request)
        return self.answer(SessionOut, queries.session_of(person), status)

    def check_csrf(self) -> None:
        SessionAuthentication().enforce_csrf(self.request)


class SessionView(OpenSession):
    """GET, POST, DELETE /api/session/

    Who is signed in, if anybody, and how the shop measures; signing in and out in the browser.
    """

    operations = {"GET": "read_session", "POST": "sign_in", "DELETE": "sign_out"}

    @extend_schema(responses=SessionOut)
    def get(self, request: Request) -> Response:
        return self.answer_session(request.user if isinstance(request.user, Person) else None)

    @extend_schema(request=SignInIn, responses={200: SessionOut, (429, MEDIA_TYPE): TOO_MANY_TRIES})
    def post(self, request: Request) -> Response:
        self.check_csrf()
        return self.answer_session(sign_in(request._request, **self.read(SignInIn)))

    @extend_schema(request=None, responses={200: SessionOut})
    def delete(self, request: Request) -> Response:
        logout(request._request)
        return self.answer_session(None)


class SetUpShop(OpenSession):
    """POST /api/set-up/

    Make the shop and its first owner, who is signed in by it. Only while there is nobody; 409 afterwards.
    """

    @extend_schema(request=SetUpIn, responses={201: SessionOut})
    def post(self, request: Request) -> Response:
        self.check_csrf()
        owner = actions.set_up_shop(**self.read(SetUpIn))
        login(request._request, owner, backend="django.contrib.auth.backends.ModelBackend")
        return self.answer_session(owner, 201)


class ChangeOwnPassword(TradeView):
    """POST /api/session/password/

    Give oneself another password. Other sessions of the same person end.
    """

    permission = Role.VIEWER

    @extend_schema(request=OwnPasswordIn, responses={204: None})
    def post(self, request: Request) -> Response:
        person = actions.change_own_password(person=person_of(request), **self.read(OwnPasswordIn))
        update_session_auth_hash(request._request, person)
        return Response(status=204)


class OneShop(Changeable):
    """GET, PATCH /api/shop/

    The shop's settings. Changing the time zone or the currency touches nothing that was posted.
    """

    http_method_names = ["get", "head", "patch"]
    operations = {"GET": "read_shop", "PATCH": "change_shop"}
    queryset = Shop.objects.all()
    serializer_class = ShopSettingsOut
    change_serializer = ShopSettings

    def get_object(self) -> Shop:
        return queries.the_shop()

    def get_locked(self) -> Shop:
        return actions.lock_shop()

    def change(self, record: Shop, values: dict[str, Any]) -> Shop:
        return actions.change_settings(by=person_of(self.request), **values)


class People(ListView):
    """GET, POST /api/people/

    Everybody who signs in or did. Usernames, addresses and tokens are for the owner to see.
    """

    queryset = Person.objects.all()
    serializer_class = PersonOut
    filterset_class = PersonFilter
    search_fields = ("name",)
    ordering_fields = ("name", "role")
    ordering = ("name",)

    def get_queryset(self) -> Any:
        return queries.people()

    @extend_schema(request=PersonIn, responses={201: PersonOut})
    def post(self, request: Request) -> Response:
        person = actions.add_person(by=person_of(request), **self.read(PersonIn))
        return self.answer(PersonOut, queries.people().get(pk=person.pk), 201)


class OnePerson(Changeable):
    """GET, PATCH /api/people/{id}/

    Ending somebody's access keeps what they recorded. The last owner who can sign in stays one (409).
    """

    http_method_names = ["get", "head", "patch"]
    queryset = Person.objects.all()
    serializer_class = PersonOut
    change_serializer = PersonChange

    def get_queryset(self) -> Any:
        return queries.people()

    def get_locked(self) -> Person:
        actions.lock_owners()
        return super().get_locked()  # type: ignore[no-any-return]

    def change(self, record: Person, values: dict[str, Any]) -> Person:
        changed = actions.change_person(person=record, by=person_of(self.request), **values)
        return queries.people().get(pk=changed.pk)


class ResetPassword(TradeView):
    """POST /api/people/{id}/password/

    Give somebody a new password, when they forgot theirs. Their sessions end.
    """

    permission = Role.OWNER

    @extend_schema(request=PasswordIn, responses={204: None})
    def post(self, request: Request, pk: int) -> Response:
        person = get_object_or_404(Person, pk=pk)
        actions.set_password(person=person, by=person_of(request), **self.read(PasswordIn))
        return Response(status=204)


class PersonToken(TradeView):
    """POST, DELETE /api/people/{id}/token/

    A token with which the person's scripts sign in; the earlier one ends. It is shown this once.
    """

    permission = Role.OWNER
    operations = {"POST": "issue_token", "DELETE": "withdraw_token"}

    @extend_schema(request=None, responses={201: TokenOut})
    def post(self, request: Request, pk: int) -> Response:
        key = actions.issue_token(person=get_object_or_404(Person, pk=pk), by=person_of(request))
        return self.answer(TokenOut, {"token": key}, 201)

    @extend_schema(request=None, responses={204: None})
    def delete(self, request: Request, pk: int) -> Response:
        actions.withdraw_token(person=get_object_or_404(Person, pk=pk), by=person_of(request))
        return Response(status=204)


class Changes(ListView):
    """GET /api/changes/

    The change log, the newest first: who changed which field of which record, before and after.
    """

    permission = Role.OWNER
    queryset = Change.objects.all()
    serializer_class = ChangeOut
    filterset_class = ChangeFilter
    ordering_fields = {"at": "id"}
    ordering = ("-at",)

    def get_queryset(self) -> Any:
        return queries.changes()
