"""Jobs are made, finished, handed over and re-opened, each with its date and its trace."""

from typing import Any

import pytest
import time_machine
from django.db import connection
from django.test.utils import CaptureQueriesContext
from rest_framework.test import APIClient

from inventory.jobs.models import Customer
from inventory.shop.models import Change, Shop

pytestmark = pytest.mark.usefixtures("shop")


@pytest.fixture(autouse=True)
def july() -> Any:
    with time_machine.travel("2026-07-10T15:00:00Z", tick=True):
        yield


def test_a_job_takes_a_customer_on_record_or_makes_one(bench: APIClient, job: dict[str, Any]) -> None:
    second = bench.post("/api/jobs/", {"customer": job["customer"]["id"], "title": "Bath"})
    nobody = bench.post("/api/jobs/", {"customer": 999_999, "title": "Bath"})
    nameless = bench.post("/api/jobs/", {"customer": {"phone": "1"}, "title": "Bath"})

    assert second.json()["customer"] == job["customer"]
    assert Customer.objects.count() == 1
    assert (nobody.status_code, nobody.json()["errors"][0]["pointer"]) == (400, "/customer")
    assert (nameless.status_code, nameless.json()["errors"][0]["pointer"]) == (400, "/customer/name")


def test_numbers_are_short_and_count_up(bench: APIClient, job: dict[str, Any]) -> None:
    second = bench.post("/api/jobs/", {"customer": job["customer"]["id"], "title": "Bath"}).json()

    assert (job["number"], second["number"]) == (1, 2)
    assert [top["number"] for top in job["pieces"]] == [1, 2]


def test_finishing_and_handing_over_keep_their_order(bench: APIClient, job: dict[str, Any]) -> None:
    def post(act: str, **body: Any) -> Any:
        return bench.post(f"/api/jobs/{job['id']}/{act}/", body)

    early = post("hand-over", handed_over_on="2026-07-09")
    tomorrow = post("finish", finished_on="2026-07-11")
    finished = post("finish", finished_on="2026-07-08")
    twice = post("finish", finished_on="2026-07-09")
    before = post("hand-over", handed_over_on="2026-07-07")
    handed_over = post("hand-over", handed_over_on="2026-07-09")

    assert (early.status_code, early.json()["type"]) == (409, "/problems/job-not-finished")
    assert (tomorrow.status_code, tomorrow.json()["errors"][0]["pointer"]) == (422, "/finished_on")
    assert finished.json()["finished_on"] == "2026-07-08"
    assert (twice.status_code, twice.json()["remedies"][0]["kind"]) == (409, "reopen")
    assert before.status_code == 422
    assert handed_over.json()["handed_over_on"] == "2026-07-09"


def test_only_the_owner_reopens_and_the_reason_is_kept(
    bench: APIClient, office: APIClient, job: dict[str, Any]
) -> None:
    bench.post(f"/api/jobs/{job['id']}/finish/", {"finished_on": "2026-07-08"})

    refused = bench.post(f"/api/jobs/{job['id']}/reopen/", {"reason": "Edge missed"})
    reopened = office.post(f"/api/jobs/{job['id']}/reopen/", {"reason": "Edge missed"})

    assert refused.status_code == 403
    assert reopened.json()["finished_on"] is None
    assert Change.objects.get(noun="job", field="reopened_because").after == "Edge missed"
    assert Change.objects.filter(noun="job", field="finished_on").last().before == "2026-07-08"  # type: ignore[union-attr]


def test_a_finished_job_takes_no_more_pieces(bench: APIClient, job: dict[str, Any]) -> None:
    body = {"name": "Late", "area_sqft": "4"}
    assert bench.post(f"/api/jobs/{job['id']}/pieces/", body).status_code == 201

    bench.post(f"/api/jobs/{job['id']}/finish/", {"finished_on": "2026-07-08"})

    assert bench.post(f"/api/jobs/{job['id']}/pieces/", body).json()["type"] == "/problems/job-finished"


def test_a_job_without_pours_is_deleted_with_its_pieces(bench: APIClient, job: dict[str, Any]) -> None:
    customer = f"/api/customers/{job['customer']['id']}/"

    in_use = bench.delete(customer)
    gone = bench.delete(f"/api/jobs/{job['id']}/")

    assert (in_use.status_code, in_use.json()["type"]) == (409, "/problems/in-use")
    assert gone.status_code == 204
    assert bench.get(f"/api/pieces/{job['pieces'][0]['id']}/").status_code == 404
    assert bench.delete(customer).status_code == 204


def test_an_edit_is_logged_and_an_old_version_refused(bench: APIClient, job: dict[str, Any]) -> None:
    address = f"/api/jobs/{job['id']}/"
    tag = bench.get(address)["ETag"]

    moved = bench.patch(address, {"due_on": "2026-08-15"}, headers={"If-Match": tag})
    stale = bench.patch(address, {"due_on": "2026-09-01"}, headers={"If-Match": tag})

    assert moved.json()["due_on"] == "2026-08-15"
    assert stale.status_code == 412
    logged = Change.objects.get(noun="job", field="due_on")
    assert (logged.before, logged.after) == ("2026-06-30", "2026-08-15")


def test_lists_are_filtered_and_cost_the_same_however_long(bench: APIClient, job: dict[str, Any]) -> None:
    def statements(address: str) -> int:
        with CaptureQueriesContext(
            connection,
        ) as captured:
            assert bench.get(address).status_code == 200
        return len(captured)

    short = [statements(address) for address in ("/api/jobs/", "/api/pieces/", "/api/customers/")]
    for number in range(8):
        bench.post(
            "/api/jobs/",
            {
                "customer": {"name": f"Customer {number}"},
                "title": f"Job {number}",
                "purpose": "sample" if number % 2 else "customer",
                "pieces": [{"name": "Board", "count": 3, "area_sqft": "2"}],
            },
        )

    assert [statements(address) for address in ("/api/jobs/", "/api/pieces/", "/api/customers/")] == short
    assert max(short) <= 5
    assert bench.get("/api/jobs/?purpose=sample").json()["count"] == 4
    assert bench.get("/api/jobs/?search=Wren").json()["count"] == 1
    assert bench.get("/api/jobs/?state=finished").json()["count"] == 0
    assert bench.get(f"/api/pieces/?job={job['id']}&ordering=-area_sqft").json()["results"][0]["name"] == "Run"
    assert bench.get("/api/jobs/?colour=red").status_code == 400


def test_a_job_sent_twice_with_one_key_is_made_once(bench: APIClient) -> None:
    body = {"customer": {"name": "Ines Park"}, "title": "Vanity"}

    first = bench.post("/api/jobs/", body, headers={"Idempotency-Key": "job-1"})
    second = bench.post("/api/jobs/", body, headers={"Idempotency-Key": "job-1"})

    assert first.json() == second.json()
    assert bench.get("/api/jobs/").json()["count"] == 1


def test_a_viewer_reads_and_changes_nothing(api: Any, viewer: Any, job: dict[str, Any]) -> None:
    client = api(viewer)

    assert client.get(f"/api/jobs/{job['id']}/").status_code == 200
    assert client.post("/api/jobs/", {"customer": {"name": "X"}, "title": "Y"}).status_code == 403
    assert client.patch(f"/api/pieces/{job['pieces'][0]['id']}/", {"name": "Z"}).status_code == 403
    assert client.delete(f"/api/jobs/{job['id']}/").status_code == 403


def test_before_the_shop_is_set_up_every_face_counts(bench: APIClient) -> None:
    Shop.objects.all().delete()

    made = bench.post("/api/jobs/", {"customer": {"name": "Ines Park"}, "title": "Vanity"})

    assert made.json()["counting_rule"]["counts_splash"] is True


@pytest.mark.parametrize("noun", ["jobs", "customers"])
def test_what_is_archived_is_offered_no_longer_until_it_is_put_back(
    bench: APIClient, job: dict[str, Any], noun: str
) -> None:
    address = f"/api/{noun}/{job['id'] if noun == 'jobs' else job['customer']['id']}/"

    def offered() -> int:
        count: int = bench.get(f"/api/{noun}/?is_archived=false").json()["count"]
        return count

    before = offered()
    archived = bench.post(f"{address}archive/")
    meanwhile = offered()
    back = bench.post(f"{address}unarchive/")

    assert (before, meanwhile, offered()) == (1, 0, 1)
    assert (archived.json()["is_archived"], back.json()["is_archived"]) == (True, False)


def test_a_job_is_given_to_another_customer_on_record(bench: APIClient, job: dict[str, Any]) -> None:
    other = bench.post("/api/customers/", {"name": "Ines Park"}).json()
    address = f"/api/jobs/{job['id']}/"

    given = bench.patch(address, {"customer": other["id"]})
    replaced = bench.put(address, {"customer": {"name": "Nobody"}, "title": "Kitchen run"})

    assert given.json()["customer"] == other
    assert (replaced.status_code, replaced.json()["errors"][0]["pointer"]) == (400, "/customer")
