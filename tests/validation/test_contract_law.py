"""What the laws on home-improvement contracts ask for, against the statutes. Not legal advice.

California B&P 7159; 10 MRS 1487; M.G.L. c.142A s.2(a); N.Y. Gen. Bus. Law 771; N.J.A.C.
13:45A-16.2; 73 P.S. 517.7(a); Md. Bus. Reg. 8-501; C.G.S. 20-429; 815 ILCS 513; RCW 18.27.114;
R.C. 4722.02 and 1345.22 of Ohio; MCL 445.112 of Michigan; 16 CFR 429.1. Seen in copies of varying
age; each demand says how it was seen.
"""

from decimal import Decimal

import pytest

from quotegen.money import Money
from quotegen.trade.contract_law import Element, Law, Seen, load_laws

LAWS = load_laws()
STATES = {"CA", "ME", "MA", "NY", "NJ", "PA", "MD", "CT", "IL", "WA", "OH"}
AT_HOME = {"CA", "MI", "OH", "US"}
STATES_AND_DC = """
AK AL AR AZ CA CO CT DC DE FL GA HI IA ID IL IN KS KY LA MA MD ME MI MN MO MS MT NC ND NE NH
NJ NM NV NY OH OK OR PA RI SC SD TN TX UT VA VT WA WI WV WY
""".split()  # noqa: SIM905


def _law(state: str) -> Law:
    found = LAWS.contract_law(state)
    return found or next(law for law in LAWS.laws if law.state == state)


@pytest.mark.parametrize(
    ("state", "element", "clause", "seen"),
    [
        ("PA", Element.CONTRACTOR_ADDRESS, "(5)", Seen.SEEN),
        ("PA", Element.TOTAL, "(8)", Seen.SEEN),
        ("MD", Element.SALESPERSON, "(c)(1)(ii)", Seen.SEEN),
        ("MD", Element.PAYMENTS, "(c)(1)(vi)", Seen.SEEN),
        ("ME", Element.WARRANTY, "(7), a fixed statement", Seen.SEEN),
        ("MA", Element.LICENSE, "(2), first page", Seen.SEEN),
        ("NY", Element.LIEN_NOTICE, "(d)", Seen.SEEN),
        ("NJ", Element.LICENSE, "on all papers", Seen.REPORTED),
        ("CT", Element.AFFILIATIONS, "(a)(1)(A)(ix)", Seen.SEEN),
        ("CA", Element.CHANGES, "(c)(5), (e)(3), 7159.6", Seen.REPORTED),
        ("CA", Element.DISPUTES, "7191, where a clause is used", Seen.MEMORY),
        ("OH", Element.TAXPAYER_ID, "(A)(1)", Seen.SEEN),
        ("OH", Element.LEFT_OUT, "(A)(7)", Seen.SEEN),
        ("MI", Element.CANCELLATION, "445.112(1), 445.113", Seen.SEEN),
        ("US", Element.CANCELLATION, "429.1(a), (b)", Seen.SEEN),
    ],
)
def test_a_demand_names_its_clause(state: str, element: Element, clause: str, seen: Seen):
    """The clause and how it was seen are those of the statute."""
    (demand,) = [d for d in _law(state).demands if d.element is element]
    assert (demand.clause, demand.seen) == (clause, seen)


def test_what_a_law_does_not_ask_is_not_said():
    """Washington's law is one on a notice: it asks for no total; Connecticut's caps no deposit."""
    assert Element.TOTAL not in {d.element for d in _law("WA").demands}
    assert Element.DEPOSIT not in {d.element for d in _law("CT").demands}
    assert Element.DISPUTES not in {d.element for d in _law("NJ").demands}


def test_every_law_is_whole():
    """Eleven states, and sales made at home in three and the nation, each with its elements."""
    assert {law.state for law in LAWS.laws if not law.home_sale} == STATES
    assert {law.state for law in LAWS.laws if law.home_sale} == AT_HOME
    for law in LAWS.laws:
        assert law.link.startswith("https://")
        elements = [demand.element for demand in law.demands]
        assert elements
        assert len(set(elements)) == len(elements)
    assert {element for element, _ in LAWS.meanings} == set(Element)


@pytest.mark.parametrize(
    ("state", "price", "found"),
    [
        ("CA", "501", ["CA", "CA", "US"]),
        ("CA", "400", ["CA", "US"]),
        ("ME", "2999", ["US"]),
        ("ME", "3001", ["ME", "US"]),
        ("OH", "9000", ["OH", "US"]),
        ("OH", "24999.99", ["OH", "US"]),
        ("OH", "25000", ["OH", "OH", "US"]),
        ("MI", "9000", ["MI", "US"]),
        ("TX", "9000", ["US"]),
        (None, "9000", ["US"]),
        ("MD", "20", ["MD"]),
    ],
)
def test_a_law_begins_at_its_price(state: str | None, price: str, found: list[str]):
    """$500 in California, $3,000 in Maine, $25,000 in Ohio, any in Maryland, $25 at home."""
    assert [law.state for law in LAWS.of(state, Money(Decimal(price)))] == found


def test_the_superset_holds_every_list():
    """Where no list is known the advice is all that any law asks for."""
    assert set(LAWS.superset()) == {d.element for law in LAWS.laws for d in law.demands}


@pytest.mark.parametrize("state", STATES_AND_DC)
def test_every_state_has_the_federal_rule(state: str):
    """A sale of $25 made at home can be cancelled in all fifty states and in DC (16 CFR 429.0)."""
    assert LAWS.of(state, Money(Decimal(25)))[-1].state == "US"


@pytest.mark.parametrize(
    ("price", "risen", "reached"),
    [
        ("23714.19", "25539", True),
        ("25000", "27500", False),  # it applies already
        ("20000", "24999.99", False),
        ("24000", "25000", True),
    ],
)
def test_a_law_that_a_little_more_would_reach(price: str, risen: str, *, reached: bool):
    """Ohio's law on contracts begins at $25,000 (R.C. 4722.02(A): equals or exceeds)."""
    found = LAWS.reached("OH", Money(Decimal(price)), Money(Decimal(risen)))
    assert [law.law.split(",")[0] for law in found] == ["Ohio Revised Code 4722.02"] * reached
