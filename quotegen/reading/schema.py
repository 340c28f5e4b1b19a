"""The JSON Schema of each input file, for editors."""

from quotegen.reading.fields.typed_fields import Model
from quotegen.reading.files.company import Company
from quotegen.reading.files.job import JobFile
from quotegen.reading.files.past_jobs import PastJobs
from quotegen.reading.files.rate_book_file import RateBookFile

FILES: dict[str, type[Model]] = {
    "job": JobFile,
    "company": Company,
    "rate-book": RateBookFile,
    "past-jobs": PastJobs,
}


def schema_of(kind: str) -> dict[str, object]:
    """Return the JSON Schema (draft 2020-12) of a kind of file."""
    schema = FILES[kind].model_json_schema(by_alias=True)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
