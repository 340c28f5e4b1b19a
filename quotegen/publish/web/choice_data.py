"""The combinations as compact JSON: every text once, and each combination as places of texts."""

import json
from collections.abc import Callable

from quotegen.explain.sheets.choice_views import ChoiceSheet, TextRows


def choice_json(choice: ChoiceSheet, tied: Callable[[str], str]) -> str:
    """Write what a page looks up when something is chosen; it computes nothing from it.

    `combinations` has for each key the place of each text in `text`, then of each list in `lists`;
    a list has places in `rows`, and a row places in `text` again. A `<` is escaped, so that no
    text can end the element.

    Args:
        choice: every combination with its texts.
        tied: ties the numbers of a text to their units.
    """
    texts: dict[str, int] = {}
    lists: dict[TextRows, int] = {}
    rows: dict[tuple[str, ...], int] = {}
    combinations = {
        one.key: [
            *(texts.setdefault(text, len(texts)) for text in one.texts),
            *(lists.setdefault(row_list, len(lists)) for row_list in one.rows),
        ]
        for one in choice.combinations
    }
    listed = [[rows.setdefault(row, len(rows)) for row in one] for one in lists]
    cells = [[texts.setdefault(cell, len(texts)) for cell in row] for row in rows]
    data = {
        "names": [*choice.text_names, *choice.row_names],
        "combinations": combinations,
        "lists": listed,
        "rows": cells,
        "text": [tied(text) for text in texts],
    }
    written = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return written.replace("<", "\\u003c")
