"""GHS hazard codes of materials, with the plain words that a label gives beside them.

Codes and statements: United Nations, Globally Harmonized System of Classification and Labelling of Chemicals, annex 3,
section 1; the EUH codes are the European Union's own additions, Regulation (EC) 1272/2008, annex II.
"""

import re

CODE = re.compile(r"H[234][0-9]{2}[A-Za-z]{0,2}|EUH[0-9]{3}[A-Z]?")
MOST_CODES = 30

STATEMENTS = {
    "H222": "Extremely flammable aerosol.",
    "H225": "Highly flammable liquid and vapour.",
    "H226": "Flammable liquid and vapour.",
    "H228": "Flammable solid.",
    "H229": "Pressurized container: may burst if heated.",
    "H302": "Harmful if swallowed.",
    "H314": "Causes severe skin burns and eye damage.",
    "H315": "Causes skin irritation.",
    "H317": "May cause an allergic skin reaction.",
    "H318": "Causes serious eye damage.",
    "H319": "Causes serious eye irritation.",
    "H334": "May cause allergy or asthma symptoms or breathing difficulties if inhaled.",
    "H336": "May cause drowsiness or dizziness.",
    "H410": "Very toxic to aquatic life with long lasting effects.",
    "H411": "Toxic to aquatic life with long lasting effects.",
    "H412": "Harmful to aquatic life with long lasting effects.",
}
ELSEWHERE = "See section 2 of the safety data sheet."


def statement_of(code: str) -> str:
    """What a hazard code says in words; for the rarer ones, where its words stand."""
    return STATEMENTS.get(code, ELSEWHERE)


def is_hazard_code(text: str) -> bool:
    """Whether a text has the form of a hazard code: H, a digit 2 to 4 and two more, or EUH and three digits.

    >>> is_hazard_code("H317"), is_hazard_code("EUH208"), is_hazard_code("P280")
    (True, True, False)
    """
    return CODE.fullmatch(text) is not None
