"""What can be wrong with a job or a piece."""

from inventory.rest.problems import BadBody, Conflict


class UnmeasurablePieces(BadBody):
    """Pieces whose measures make no area; each fault stands in `errors` with its pointer."""


class JobFinished(Conflict):
    slug = "job-finished"
    title = "The job is finished"

    def __init__(self, detail: str, *, job: int) -> None:
        remedy = {"kind": "reopen", "text": "Re-open the job, with a reason.", "call": f"/api/jobs/{job}/reopen/"}
        super().__init__(detail, remedies=[remedy])


class JobNotFinished(Conflict):
    slug = "job-not-finished"
    title = "The job is not finished"


class PieceScrapped(Conflict):
    slug = "piece-scrapped"
    title = "The piece is scrapped"


class PieceNotScrapped(Conflict):
    slug = "piece-not-scrapped"
    title = "The piece is not scrapped"
