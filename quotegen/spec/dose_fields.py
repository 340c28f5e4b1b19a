"""Fields for how much of a material goes into or onto concrete: `1.5 lb / cu yd`."""

import re
from collections.abc import Callable
from decimal import Decimal
from typing import Annotated

from pydantic import PlainValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

from quotegen.money import ZERO
from quotegen.quantity import decimal_from_text
from quotegen.spec.text_fields import cut_short


def _dose(unit: str, example: str) -> tuple[PlainValidator, WithJsonSchema]:
    parse = _parser(unit, example)
    schema = {"type": "string", "description": f"A number of {unit}", "examples": [example]}
    return PlainValidator(parse), WithJsonSchema(schema)


def _parser(unit: str, example: str) -> Callable[[object], Decimal]:
    words = r"\s*".join(re.escape(word) for word in unit.split())
    form = re.compile(rf"(?P<number>\d{{1,5}}(\.\d{{1,4}})?)\s*{words}")

    def parse(typed: object) -> Decimal:
        match = form.fullmatch(" ".join(typed.lower().split())) if isinstance(typed, str) else None
        amount = decimal_from_text(match["number"]) if match else ZERO
        if amount <= 0:
            said = f"`{cut_short(str(typed))}` is not a dose; type it like {example}"
            raise PydanticCustomError("not-a-dose", said)
        return amount

    return parse


DosePerCuyd = Annotated[Decimal, *_dose("lb / cu yd", "1.5 lb / cu yd")]
DosePer100Sqft = Annotated[Decimal, *_dose("lb / 100 sq ft", "60 lb / 100 sq ft")]
Coverage = Annotated[Decimal, *_dose("sq ft / gal", "200 sq ft / gal")]
