"""Laws of other bids: the parts add up, and less work never costs more."""

from decimal import Decimal
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from quotegen.explain.results import Results
from quotegen.money import Money, total
from quotegen.pricing.costs.bids import BidComparison, compare
from quotegen.pricing.quoted.lines import with_what_follows, work_lines
from quotegen.reading.files.other_bids import OtherBid, Says
from tests.pricing import shop
from tests.world import EXAMPLES, retyped

DECK = next(path for path in shop.JOBS if path.stem == "orchard-bend-pool-deck")
METRIC = next(path for path in shop.JOBS if path.stem == "ferry-road-drive")

ALL_IN = EXAMPLES.parent / "all_in" / "jobs" / "kiln-hill-pool-deck.yaml"

jobs = st.sampled_from([DECK, METRIC, ALL_IN])
numbers = st.fixed_dictionaries({}, optional={
    "thickness": st.sampled_from(["3-1/2 in", "4 in", "6 in"]),
    "base": st.sampled_from(["3 in", "6 in"]),
    "reinforcement": st.sampled_from(["fiber", "mesh", "bar_grid", "rods"]),
    "strength_psi": st.sampled_from(["3500", "4500"]),
    "sealer_coats": st.sampled_from(["0", "1", "2"]),
})  # fmt: skip
scopes = st.dictionaries(
    st.sampled_from(sorted(shop.shared().content.scope)), st.sampled_from(Says)
)
totals = st.decimals(min_value="0.01", max_value="99999.99", places=2)


class TestParts:
    """Left out, not stated, their numbers and extras, our discount, what remains: the gap."""

    @given(jobs, scopes, numbers, totals)
    def test_they_add_up(
        self, job_file: Path, scope: dict[str, Says], told: dict[str, str], asked: Decimal
    ):
        """Whatever a bid says and asks; and no part at our prices is less than zero."""
        results = shop.example_results(job_file)
        found = _compared(results, _bid(str(asked), scope, told))
        known = found.left_out + found.not_stated + found.at_their_numbers + found.for_their_extras
        assert known + found.discount + found.remains == found.gap
        assert found.discount == (-250 if job_file == ALL_IN else 0)
        assert found.gap == results.quote.chosen.total - found.theirs
        assert found.left_out >= 0
        assert found.not_stated >= 0
        assert found.for_their_extras <= 0
        of_numbers = [one.worth for one in found.numbers if one.worth]
        assert sum(of_numbers) == -found.at_their_numbers

    @given(jobs, scopes)
    def test_no_item_is_worth_more_than_it_can_be(self, job_file: Path, scope: dict[str, Says]):
        """What is for an item alone is no more than all the prices that it is in."""
        results = shop.example_results(job_file)
        found = _compared(results, _bid("9000", scope))
        assert all(0 <= item.at_least <= item.at_most <= found.ours for item in found.items)

    @given(jobs, scopes, st.sampled_from(sorted(shop.shared().content.scope)))
    def test_leaving_out_more_is_worth_more(self, job_file: Path, scope, item: str):
        """One more item that is not included never makes what is left out worth less."""
        results = shop.example_results(job_file)
        bids = [_bid("9000", one) for one in (scope, {**scope, item: Says.NOT_INCLUDED})]
        before, after = (_compared(results, bid) for bid in bids)
        if scope.get(item) is not Says.NOT_INCLUDED:
            assert after.left_out >= before.left_out


class TestLessWork:
    """Removing a scope item lowers or keeps the price."""

    @given(jobs, st.sets(st.sampled_from(sorted(shop.shared().content.scope))))
    def test_less_scope_is_never_dearer(self, job_file: Path, without: set[str]):
        """Minimum and taxes included, the job without some lines costs as much or less."""
        results = shop.example_results(job_file)
        lines = work_lines(results.job, results.takeoff, results.job.finish)
        kept = tuple(line for line in lines if without.isdisjoint(line.scope))
        assert _price(results, kept) <= _price(results, lines)


def _price(results, lines) -> Money:
    every = with_what_follows(results.job, results.job.finish, (), lines)
    return total(tuple(line.amount for line in every))


def _bid(asked: str, scope: dict[str, Says], told: dict[str, str] | None = None) -> OtherBid:
    typed = {item: says.value for item, says in scope.items()}
    return OtherBid.model_validate(
        {"id": "x", "total": asked, "scope": typed, "numbers": told or {}}
    )  # fmt: skip


def _compared(results: Results, bid: OtherBid) -> BidComparison:
    return compare(results.job, results.takeoff, bid, results.quote.finishes, None)


def test_an_extra_that_is_not_wanted_costs_nothing():
    """Without its extras a job has the same price, since an extra is no part of it."""
    results = shop.example_results(DECK)
    without = retyped(results.job, extras={})
    assert _price(results, work_lines(without, results.takeoff, without.finish)) == (
        results.quote.chosen.total
    )
