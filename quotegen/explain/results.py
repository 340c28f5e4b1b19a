"""All that stages 1 to 4 worked out for one job, and the words to explain it in."""

from collections.abc import Mapping
from dataclasses import dataclass

from quotegen.explain.wording import Words
from quotegen.pricing.contract.records import Contract
from quotegen.pricing.contract.since_issued import SinceIssued
from quotegen.pricing.quoted.access import AccessChoice
from quotegen.pricing.quoted.records import Line, PricedQuote
from quotegen.pricing.quoted.upkeep import Upkeep
from quotegen.reading.content.content import Content
from quotegen.reading.files.rate_book import SEALING, Sealer
from quotegen.reading.files.shapes import EdgeKind
from quotegen.reading.records import JobSpec, PlacementSpec
from quotegen.schedule.day_plans import DayPlan
from quotegen.schedule.moved import Days
from quotegen.schedule.openings import OpeningDay
from quotegen.schedule.visits import Visit
from quotegen.takeoff.records import Material, Takeoff
from quotegen.trade.contract_law import ContractLaws
from quotegen.trade.rules import RuleBook

_AT_AN_EDGE: Mapping[str, tuple[EdgeKind, ...]] = {
    "isolation": (EdgeKind.ISOLATED,),
    "cast_edge": (EdgeKind.POOL,),
}
"""What stands along an edge, and so on no job without one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Results:
    """What every builder of a sheet or a paper is given. It holds nothing of the owner's alone.

    Attributes:
        visits: dated, for each finish that is offered.
        openings: the days at the chosen finish.
        days: of the contract, with what each change moves.
        contract: the accepted price, what changed it, what is paid and still owed.
        day_plans: the days of every combination, those of the quote first.
        upkeep: of each finish that needs a sealer.
        access: how concrete gets to the slab, None where no truck stand is typed.
        to_order: the order list of the slab that will be poured: measured in the forms, once it is,
            and with the finish that was accepted.
        laws: on written contracts, for the owner's checklist.
        since: what moved since the revision before this one was sent; None where none was.
        issued: whether this goes out as it is; anything else is a draft, and its papers say so.
    """

    job: JobSpec
    takeoff: Takeoff
    quote: PricedQuote
    visits: Mapping[str, tuple[Visit, ...]]
    openings: tuple[OpeningDay, ...]
    contract: Contract
    days: Days
    day_plans: tuple[DayPlan, ...]
    upkeep: Mapping[str, Upkeep]
    rules: RuleBook
    content: Content
    words: Words
    access: AccessChoice | None = None
    to_order: tuple[Material, ...]
    laws: ContractLaws
    since: SinceIssued | None = None
    issued: bool = False

    @property
    def chosen_visits(self) -> tuple[Visit, ...]:
        return self.visits[self.job.finish]

    def scope_items(self) -> tuple[str, ...]:
        """The scope items that the chosen price covers, in the order of their pages.

        An all-in price covers what is usual; what this job has nothing of is left out.
        """
        lines = self.quote.chosen.lines
        named = {line.scope[0] for line in lines}
        covered = {item for line in lines for item in line.scope if self._has(item)}
        return tuple(item for item in self.content.scope if item in named | covered)

    def _has(self, scope_item: str) -> bool:
        """Whether the job has what a joint at an edge or a sealer would be for."""
        job = self.job
        if scope_item == SEALING:
            finishes = (job.finish_of(p, job.finish)[1] for p in job.placements)
            return any(one.sealer is not Sealer.NONE for one in finishes)
        edges = _AT_AN_EDGE.get(scope_item)
        return edges is None or any(
            placement.edges_ft[edge] for placement in self.takeoff.placements for edge in edges
        )

    def lines_for(self, scope_item: str) -> tuple[Line, ...]:
        """The lines of the chosen price that pay for a scope item."""
        return tuple(line for line in self.quote.chosen.lines if scope_item in line.scope)

    def lines_named_for(self, scope_item: str) -> tuple[Line, ...]:
        """The lines whose first scope item this is: there their amount is shown, and only there."""
        return tuple(line for line in self.quote.chosen.lines if line.scope[0] == scope_item)

    def placement_name(self, line: Line) -> str:
        """The name of a line's placement; empty for a line of the whole job."""
        names = {p.id: p.name for p in self.job.placements}
        return names.get(line.placement or "", "")

    def by_placement(self, texts: Mapping[str, str]) -> str:
        """Join the text of each placement, by id; a text that all share stands alone."""
        if len(set(texts.values())) == 1:
            return next(iter(texts.values()))
        names = {p.id: p.name for p in self.job.placements}
        return "; ".join(f"{names[key]}: {text}" for key, text in texts.items())

    def placements_with(self, scope_item: str) -> tuple[PlacementSpec, ...]:
        """The placements with a line for a scope item; all, where a line is for the whole job."""
        ids = {line.placement for line in self.lines_for(scope_item)}
        return tuple(p for p in self.job.placements if None in ids or p.id in ids)
