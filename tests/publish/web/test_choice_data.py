"""What the page looks up: whole, each text once, and unable to end its element."""

import json

from quotegen.explain.sheets.choice_views import ChoiceSheet, CombinationTexts
from quotegen.publish.web.choice_data import choice_json

ROWS = (("Deposit", "$10"), ("Rest", "$90"))
SHEET = ChoiceSheet(
    groups=(), extras=(), text_names=("total", "said"), row_names=("payments",),
    combinations=(
        CombinationTexts(key="plain,", texts=("$100", "Plain </script>"), rows=(ROWS,)),
        CombinationTexts(key="fancy,", texts=("$100", "Fancy"), rows=(ROWS,)),
    ),
)  # fmt: skip


def test_every_text_can_be_looked_up():
    """By key and name one finds what the core said; what is said twice is there once."""
    data = json.loads(choice_json(SHEET, str))
    found = {}
    for key, places in data["combinations"].items():
        total, said, payments = places
        rows = [[data["text"][cell] for cell in data["rows"][row]]
                for row in data["lists"][payments]]  # fmt: skip
        found[key] = (data["text"][total], data["text"][said], rows)
    rows = [list(row) for row in ROWS]
    assert found == {"plain,": ("$100", "Plain </script>", rows), "fancy,": ("$100", "Fancy", rows)}
    assert data["names"] == ["total", "said", "payments"]
    assert len(set(data["text"])) == len(data["text"])
    assert len(data["lists"]) == 1


def test_no_text_can_end_the_script():
    """HTML, 4.12.1.3: without a `<` nothing in the data can close its element."""
    assert "<" not in choice_json(SHEET, str)
