"""Property tests try the same examples in every run, so that a change is judged by the change.

For a search with fresh examples: ``pytest --hypothesis-profile=search``.
"""

from hypothesis import settings

settings.register_profile("steady", derandomize=True)
settings.register_profile("search", derandomize=False)
settings.load_profile("steady")
