"""Whether a sentence tells of people and what they do, rather than of marks.

Clients write as they speak: "The owner believes that her spoons came home after the war". In such a
sentence a picture or a role is a mark only once it is said that something is struck.
"""

from collections.abc import Sequence
from typing import NamedTuple

from planish.marks.describe import vocabulary as v
from planish.marks.describe.lexicon import Lexicon
from planish.marks.describe.tokens import Token

#: who is told of; a role's name ("owner's initials") is no person
_PERSONS = v.word_set(
    "heir heiress owner reader collector dealer buyer seller finder detectorist friend member author "
    "blogger reviewer columnist grandmother grandfather grandma grandpa granny mother father aunt "
    "uncle husband wife client customer forum society article antiquary antiquarie visitor neighbour "
    "neighbor parent grandparent auction trade museum blog artist designer somebody someone people "
    "he she they we"
)
#: what such people do, in the words of this trade's letters to the editor
_DOING = v.word_set(
    "believe believes think thinks ask asks wonder wonders bought buys buy inherit inherited wants want "
    "doubt doubts send sends sent sell sells sold warn warns keep keeps kept list lists explain explains "
    "took take takes argue argues report reports found find finds finding met meets know knows says said "
    "brought bring brings dispute disputes confuse confuses check checks trust trusts date dates dated "
    "reads read clean cleans cannot expects hopes tells told gave given spotted got owns play plays "
    "demand demands notes claim claims calls called spots"
)
#: verbs said of people as well as of marks
SPOKEN = frozenset(("reads", "reading", "says", "signed", "marking", "it says", "bears"))
_REACH = 14
_LONGEST = 80
#: so many texts, verbs and pictures in one sentence list marks, whoever is named beside them
_LISTS = 2
_BEFORE = frozenset(("a", "an", "the", ",", "and", "with", "two", "three", "crowned"))


class Told(NamedTuple):
    """What a sentence of people tells of. story: of what they did. listed: of marks, one by one."""

    story: bool = False
    listed: bool = False


def told(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> Told:
    """What the sentence that begins here tells, if a person does something near its start.

    Listed are marks in "my grandmother left me a spoon with a lion and an anchor".
    """
    person = doing = False
    signals = 0
    offset = at
    while offset < min(at + _LONGEST, len(tokens)):
        token = tokens[offset]
        if token.kind == "stop" and token.text in ".:":
            if token.text == ":":
                return Told()  # what follows is a list
            break
        step = 1
        if token.kind == "quote":
            signals += 1
        elif token.kind == "word":
            word = token.text.casefold()
            near = offset < at + _REACH
            doing = doing or (person and near and word in _DOING)
            role = lexicon.find(tokens, offset, ("role",))
            person = person or (near and role is None and bool(set(token.units) & _PERSONS))
            hit = lexicon.find(tokens, offset, ("device", "technique"))
            if hit and word not in SPOKEN and not lexicon.find(tokens, offset, ("part",)):
                before = tokens[offset - 1].text.casefold() if offset else ","
                signals += before in _BEFORE if hit[0] == "device" else not hit[1]
                step = hit[2]
        offset += step
    return Told(doing and signals < _LISTS, person and signals >= _LISTS)
