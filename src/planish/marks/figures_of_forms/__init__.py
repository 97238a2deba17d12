"""Figures of forms: a line drawing of each form with numbered pins where its marks sit.

``figure(form, library)`` finds the drawing and its pins; ``svg(figure)`` draws it. The drawings are
the project's own. Which drawing shows a form, and which of its named places each place of
``spots.csv`` is, stands in ``pins.csv``. A pin has a state, in the words of the screens: seen;
searched, nothing found; not searched.
"""

from planish.marks.figures_of_forms.compose import STYLE, svg
from planish.marks.figures_of_forms.figure import Figure, Pin, State, figure, ticked

__all__ = ["STYLE", "Figure", "Pin", "State", "figure", "svg", "ticked"]
