"""How sure a fact is, in words."""

#: by the library's word for how sure a row is
CONFIDENCE = {
    "two-sources": "two sources agree",
    "sourced": "one source",
    "memory": "from memory, no source",
    "practice": "common practice in the trade",
}
#: keys in the place of a source that name no printed work
UNPRINTED = {key: CONFIDENCE[key] for key in ("memory", "practice")}
