"""The whole job file, and what is left of it without its private keys."""

from quotegen.reading.files.job import Job, JobFile
from quotegen.reading.yaml.typed_file import Typed, load
from tests.world import PATIO

PRIVATE = """\
special_order: $777
private_notes: the gate is narrow
under_floor: a neighbor of ours
private_costs: [{what: Permit, kind: permit, amount: $65}]
other_bids: [{id: first, total: $5000}]
actual: {done: 2026-06-20}
"""


def test_the_public_job_has_every_other_key(tmp_path):
    """What is the owner's alone is gone, and all else is as it was typed."""
    path = tmp_path / "job.yaml"
    path.write_text(PATIO + PRIVATE, encoding="utf-8")
    job = load(path, JobFile)
    assert isinstance(job, Typed)
    public = job.value.public()
    assert type(public) is Job
    assert JobFile.model_fields.keys() - vars(public).keys() == {
        "special_order", "private_notes", "under_floor", "private_costs", "other_bids", "actual",
        "photos",
    }  # fmt: skip
    assert all(getattr(public, key) == getattr(job.value, key) for key in vars(public))
