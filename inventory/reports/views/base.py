"""What the reports' views have in common."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, ClassVar

from inventory.reports.ordering import chosen_order, in_order
from inventory.rest.money import sees_money
from inventory.rest.problems import Role
from inventory.rest.views import ReportView


class OrderedReport(ReportView):
    """A report whose rows can be ordered by any column.

    orderings: column -> the attribute of a row that it stands for. money_orderings: those that are money.
    ask: gives the report, a dataclass with `rows`.
    """

    permission = Role.VIEWER
    orderings: ClassVar[Mapping[str, str]] = {}
    money_orderings: ClassVar[frozenset[str]] = frozenset()

    def ask(self, **query: Any) -> Any:
        raise NotImplementedError

    def report(self, *, ordering: str = "", **query: Any) -> Any:
        hidden = frozenset() if sees_money(self.request.user) else self.money_orderings
        allowed = {name: attribute for name, attribute in self.orderings.items() if name not in hidden}
        order = chosen_order(ordering, allowed)
        report = self.ask(**query)
        return replace(report, rows=in_order(report.rows, order)) if order else report
