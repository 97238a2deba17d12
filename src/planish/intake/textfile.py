"""Tables as text: the encoding and the sign that parts the cells are found from the bytes.

A text is taken as UTF-8 or UTF-16 where it says so by its first bytes (byte order mark, Unicode
Standard, section 23.8) or reads as such; else as Windows-1252, the usual one of spreadsheets in
western Europe. Cells are parted as in RFC 4180, by a comma, a semicolon, a tab or an upright line.
"""

import csv
import io
from collections.abc import Iterator

from planish.intake.table import MAX_CELL, Fault, IntakeError, Table, built

MAX_BYTES = 200_000_000
_MARKS = (
    (b"\xef\xbb\xbf", "utf-8-sig", "UTF-8"),
    (b"\xff\xfe", "utf-16", "UTF-16"),
    (b"\xfe\xff", "utf-16", "UTF-16"),
)
_DELIMITERS = {",": "commas", ";": "semicolons", "\t": "tabs", "|": "upright lines"}
#: files of other kinds that people give a name ending in .csv, by their first bytes
_OTHER = (
    (b"PK\x03\x04", "a workbook or archive", "give it a name ending in .xlsx, or save it as CSV"),
    (b"\xd0\xcf\x11\xe0", "an old workbook (.xls)", "save it as .xlsx or CSV"),
    (b"%PDF", "a PDF", "give a table"),
    (b"\xff\xd8\xff", "a photograph", "give a table"),
    (b"\x89PNG", "a picture", "give a table"),
)
#: how much of a file without a byte order mark is looked at for zeros
_HEAD = 4096


def read_text(data: bytes, name: str) -> Table:
    """The table of a text file.

    Lines that begin with ``#`` before the header are comments.

    Raises:
        IntakeError: it is no text, too large, empty, or has no header.
    """
    if len(data) > MAX_BYTES:
        raise IntakeError(
            name, f"larger than {MAX_BYTES // 1_000_000} MB", "part it into several files"
        )
    text, encoding = decoded(data, name)
    if not text.strip():
        raise IntakeError(name, "nothing is in it", "give a table with a header line")
    sign = delimiter(text)
    faults: list[Fault] = []
    records = list(_records(text, sign, name))
    return built(name, f"{encoding}, parted by {_DELIMITERS[sign]}", records, faults)


def decoded(data: bytes, name: str) -> tuple[str, str]:
    """The text of the bytes, and the name of their encoding.

    Raises:
        IntakeError: they are no text.
    """
    for start, what, mend in _OTHER:
        if data.startswith(start):
            raise IntakeError(name, f"it is {what}, not a table in text", mend)
    for mark, codec, shown in _MARKS:
        if data.startswith(mark):
            try:
                return data.decode(codec), shown
            except UnicodeDecodeError as fault:
                raise IntakeError(
                    name, f"broken {shown} at byte {fault.start + 1}", "save it anew as UTF-8"
                ) from None
    head = data[:_HEAD]
    if b"\0" in head:
        bare = _without_mark(head)
        if bare:
            try:
                return data.decode(bare), "UTF-16"
            except UnicodeDecodeError:
                pass
        raise IntakeError(name, "it is no text", "save the table as CSV (UTF-8)")
    try:
        return data.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError:
        pass
    if not any(byte < 32 and byte not in b"\t\n\r\f" for byte in head):
        try:
            return data.decode("cp1252"), "Windows-1252"
        except UnicodeDecodeError:
            pass
    raise IntakeError(
        name, "it is neither UTF-8, UTF-16 nor Windows-1252", "save it as CSV (UTF-8)"
    )


def _without_mark(head: bytes) -> str | None:
    """UTF-16 without its mark: every other byte of mostly Latin text is zero."""
    even, odd = head[::2].count(0), head[1::2].count(0)
    half = len(head) // 2
    if odd > 0.4 * half and even < 0.05 * half:
        return "utf-16-le"
    if even > 0.4 * half and odd < 0.05 * half:
        return "utf-16-be"
    return None


def delimiter(text: str) -> str:
    """What parts the cells: the sign that cuts the first records into equal and many cells."""
    best, most = ",", (0.0, 0.0)
    for sign in _DELIMITERS:
        counts = []
        try:
            for _, cells in _records(text[:200_000], sign, ""):
                counts.append(len(cells))
                if len(counts) >= 50:
                    break
        except IntakeError:
            continue  # quotes that fit another sign
        if not counts or counts[0] < 2:
            continue
        alike = sum(c == counts[0] for c in counts) / len(counts)
        score = (alike * counts[0] if alike > 0.5 else alike, counts[0])
        if score > most:
            best, most = sign, score
    return best


def _records(text: str, sign: str, name: str) -> Iterator[tuple[int, list[str]]]:
    """Records with the number of their first line; comments above the header are left out.

    Raises:
        IntakeError: a quote is not closed.
    """
    if "\n" not in text:
        text = text.replace("\r", "\n")  # line ends of old machines
    lines = text.split("\n")
    start = 0
    while start < len(lines) and (not lines[start].strip() or lines[start].startswith("#")):
        start += 1
    body = io.StringIO("\n".join(lines[start:]), newline="")
    before = csv.field_size_limit(max(MAX_CELL * 4, 1_000_000))
    reader = csv.reader(body, delimiter=sign, strict=True)
    line = start + 1
    try:
        for cells in reader:
            yield line, cells
            line = start + reader.line_num + 1
    except csv.Error as fault:
        raise IntakeError(
            f"{name}, row {line}",
            f"cannot be parted into cells ({fault})",
            'close each " with another, and double a " that is part of the text',
        ) from None
    finally:
        csv.field_size_limit(before)
