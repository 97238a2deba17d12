"""Photographs beside a case file: their path is kept inside the folder, their bytes are looked at."""

import difflib
from pathlib import Path, PurePosixPath, PureWindowsPath

#: bytes read from the head of a file to tell its kind
_HEAD = 16
#: larger photographs would not fit into a report
MOST_BYTES = 40_000_000

_USABLE: tuple[tuple[bytes, str], ...] = (
    (b"\xff\xd8\xff", "JPEG"),
    (b"\x89PNG\r\n\x1a\n", "PNG"),
)
_OTHER: tuple[tuple[bytes, str], ...] = (
    (b"GIF8", "a GIF picture"),
    (b"II*\x00", "a TIFF picture"),
    (b"MM\x00*", "a TIFF picture"),
    (b"BM", "a BMP picture"),
    (b"%PDF", "a PDF document"),
    (b"<svg", "an SVG drawing"),
    (b"<?xml", "an XML document"),
    (b"PK\x03\x04", "a ZIP archive"),
)


def kind_of(head: bytes) -> tuple[str, bool]:
    """What a file is by its first bytes, and whether a report can show it.

    The signatures are those of ISO/IEC 10918-1 (JPEG start of image), W3C PNG (third edition)
    section 5.2 and the RIFF/WEBP and ISO base media containers.
    """
    for start, name in _USABLE:
        if head.startswith(start):
            return name, True
    if head[:4] == b"RIFF" and head[8:12] == b"WEBP":
        return "WebP", True
    if head[4:8] == b"ftyp":
        return "a HEIC or other camera container", False
    for start, name in _OTHER:
        if head.startswith(start):
            return name, False
    return ("an empty file" if not head else "no picture"), False


def fault_of(folder: Path, name: str) -> tuple[str, str] | None:
    """What is wrong with a photograph named in the case, and how to mend it; None if nothing."""
    windows, posix = PureWindowsPath(name), PurePosixPath(name)
    if windows.is_absolute() or windows.drive or posix.is_absolute() or name.startswith("~"):
        return "the path is absolute", "put the picture beside the case file and name it from there"
    if "\\" in name:
        return "the path has a backslash", f"write '{name.replace(chr(92), '/')}'"
    if ".." in posix.parts or "\x00" in name:
        return "the path leaves the case's folder", "put the picture beside the case file"
    path = folder / name
    try:
        if not path.exists():
            return "no such file beside the case file", _near(folder, posix) or "add it or mend it"
        if not path.resolve().is_relative_to(folder.resolve()):
            return "the path leaves the case's folder by a link", "copy the picture into the folder"
        if not path.is_file():
            return "this is not a file", "name the picture itself"
        size = path.stat().st_size
        with path.open("rb") as stream:
            found, usable = kind_of(stream.read(_HEAD))
    except OSError as fault:
        return f"cannot be read ({fault.strerror or 'fault of the file system'})", "mend the file"
    if not usable:
        return f"the file is {found}", "save the picture as JPEG, PNG or WebP"
    if size > MOST_BYTES:
        return f"the picture has {size / 1e6:.0f} MB", f"save it below {MOST_BYTES // 10**6} MB"
    return None


def _near(folder: Path, wanted: PurePosixPath) -> str:
    """A file of the same folder with nearly the same name."""
    place = folder / wanted.parent
    if not place.is_dir():
        return ""
    names = {p.name.lower(): p.name for p in sorted(place.iterdir())[:2000] if p.is_file()}
    near = difflib.get_close_matches(wanted.name.lower(), list(names), n=1, cutoff=0.6)
    return f"did you mean '{wanted.parent / names[near[0]]}'?" if near else ""
