"""How a job came out, typed in when it is done. Private."""

from pydantic import Field

from quotegen.spec.costs import HoursField
from quotegen.spec.fields import DateField, Model, Slug, Text, VolumeField, WholeField


class Actual(Model):
    """What a job really took.

    Attributes:
        done: the last day on site.
        hours: crew hours by rate or finish, as the rate book names them; also `set_up`,
            `clean_up` and `drive`.
        concrete: all that was delivered.
        days: days on site.
    """

    done: DateField
    hours: dict[Slug, HoursField] = Field(default_factory=dict)
    concrete: VolumeField | None = None
    days: WholeField | None = None
    note: Text | None = None
