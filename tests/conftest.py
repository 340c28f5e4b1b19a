"""What every test shares: how hard hypothesis tries."""

from datetime import timedelta

from hypothesis import HealthCheck, settings

# Always on: small, and the same cases every time, so that a red run can be repeated.
settings.register_profile(
    "always", max_examples=60, deadline=None, derandomize=True, print_blob=True
)
# `./run fuzz`: many cases, new ones each time; what it finds becomes an ordinary test.
settings.register_profile(
    "fuzz",
    max_examples=5_000,
    deadline=timedelta(seconds=20),
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
settings.load_profile("always")
