"""The report: one PDF that an insurer, an heir, a tax office or a court can rely on.

``view`` turns a case worked through into what is printed, ``write_pdf`` sets it. ``write_report``
does both, with the photographs beside the case file and the case itself inside the PDF.
"""

from planish.report.build import view
from planish.report.compile import PAPERS, Attachment, write_pdf
from planish.report.errors import (
    GlyphError,
    OutError,
    PhotographError,
    ReportError,
    TypesetError,
)
from planish.report.marks_svg import mark_in_words, mark_svg
from planish.report.view import ReportView
from planish.report.whole import attachments, write_report

__all__ = [
    "PAPERS",
    "Attachment",
    "GlyphError",
    "OutError",
    "PhotographError",
    "ReportError",
    "ReportView",
    "TypesetError",
    "attachments",
    "mark_in_words",
    "mark_svg",
    "view",
    "write_pdf",
    "write_report",
]
