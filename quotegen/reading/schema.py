"""The JSON Schema of each input file, for editors."""

from quotegen.reading.kinds import KINDS


def schema_of(kind: str) -> dict[str, object]:
    """Return the JSON Schema (draft 2020-12) of a kind of file."""
    schema = KINDS[kind].model_json_schema(by_alias=True)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
