"""What the invented shop buys: materials, packs and its two resin systems. Names, colours and prices are invented.

Cautions are the usual ones of the trade; a real shop types those of its own data sheets.
"""

from dataclasses import dataclass
from decimal import Decimal

RESIN_CAUTION = (
    "Nitrile gloves and eye cover. Skin that itches or reddens means stop: wash with soap, never with solvent. "
    "Never leave a mixed batch in the bucket: pour it out or split it."
)
HARDENER_CAUTION = (
    "Burns skin and eyes. In the eyes: rinse 15 to 20 minutes and call for help. Nitrile gloves, eye cover, fresh air."
)
AEROSOL_CAUTION = "No torch, heat gun, heater or spark while spraying, or while mist hangs in the air. Fresh air."
POWDER_CAUTION = "A dust mask when scooping dry powder."
SOLVENT_CAUTION = "Vapour catches fire. No flame, no heater. Rags go into a closed metal can."


@dataclass(frozen=True)
class Stuff:
    """A material of the demo. density in g/mL; spoon: grams in a level teaspoon; lives in days."""

    code: str
    name: str
    kind: str
    unit: str
    supplier: str
    density: str | None = None
    spoon: str | None = None
    shelf_life: int | None = None
    open_life: int | None = None
    one_lot: bool = False
    tracks_lots: bool = True
    hazards: tuple[str, ...] = ()
    cautions: str = ""
    swatch: str = ""
    measures: tuple[tuple[str, str], ...] = ()


# fmt: off
MATERIALS = [
    Stuff("FLD-A", "Flood resin A, slow", "resin", "ml", "resin", "1.13", shelf_life=540, open_life=270,
          hazards=("H315", "H317", "H319", "H411"), cautions=RESIN_CAUTION, swatch="#e9ecec",
          measures=(("pump", "30 ml"),)),
    Stuff("FLD-B", "Flood hardener B, slow", "hardener", "ml", "resin", "0.96", shelf_life=365, open_life=180,
          hazards=("H302", "H314", "H317", "H412"), cautions=HARDENER_CAUTION, swatch="#f0e6c8",
          measures=(("pump", "15 ml"),)),
    Stuff("TBL-A", "Table resin A, hard", "resin", "ml", "resin", "1.13", shelf_life=540, open_life=270,
          hazards=("H315", "H317", "H319", "H411"), cautions=RESIN_CAUTION, swatch="#eef1f1"),
    Stuff("TBL-B", "Table hardener B, hard", "hardener", "ml", "resin", "0.97", shelf_life=365, open_life=180,
          hazards=("H302", "H314", "H317", "H412"), cautions=HARDENER_CAUTION, swatch="#efe3bd"),
    Stuff("SAT-A", "Satin top coat A", "resin", "ml", "resin", "1.05", shelf_life=365, open_life=120,
          hazards=("H317", "H412"), cautions=RESIN_CAUTION, swatch="#dfe3df"),
    Stuff("SAT-B", "Satin top coat B (isocyanate)", "hardener", "ml", "resin", "1.12", shelf_life=270, open_life=60,
          hazards=("H317", "H334"), swatch="#e7e2cf",
          cautions="Contains isocyanate: only the respirator that its data sheet names. " + HARDENER_CAUTION),
    Stuff("DYE-PEAT", "Dye, peat black", "dye", "ml", "pigment", "1.02", shelf_life=730, one_lot=True,
          hazards=("H319",), swatch="#1d1a18", measures=(("squeeze", "1.5 ml"),)),
    Stuff("DYE-CHALK", "Dye, chalk white", "dye", "ml", "pigment", "1.25", shelf_life=730, one_lot=True,
          hazards=("H319",), swatch="#f5f3ee", measures=(("squeeze", "1.5 ml"),)),
    Stuff("DYE-TEAL", "Dye, estuary", "dye", "ml", "pigment", "1.03", shelf_life=730, one_lot=True,
          hazards=("H319",), swatch="#2d6a70", measures=(("squeeze", "1.5 ml"),)),
    Stuff("DYE-UMBER", "Dye, wet bark", "dye", "ml", "pigment", "1.04", shelf_life=730, one_lot=True,
          hazards=("H319",), swatch="#5a4030", measures=(("squeeze", "1.5 ml"),)),
    Stuff("PST-CHALK", "Paste, chalk white", "paste", "g", "pigment", "1.6", shelf_life=540, one_lot=True,
          swatch="#faf8f2"),
    Stuff("PST-SLATE", "Paste, roof slate", "paste", "g", "pigment", "1.5", shelf_life=540, one_lot=True,
          swatch="#4c535a"),
    Stuff("PWD-MOTH", "Powder, moth silver", "powder", "g", "pigment", spoon="1.7", one_lot=True,
          cautions=POWDER_CAUTION, swatch="#b9bcc0", measures=(("scoop", "4 g"),)),
    Stuff("PWD-PENNY", "Powder, old penny", "powder", "g", "pigment", spoon="1.8", one_lot=True,
          cautions=POWDER_CAUTION, swatch="#9c5f3a", measures=(("scoop", "4 g"),)),
    Stuff("PWD-STRAW", "Powder, dry straw", "powder", "g", "pigment", spoon="1.7", one_lot=True,
          cautions=POWDER_CAUTION, swatch="#c8a64b", measures=(("scoop", "4 g"),)),
    Stuff("PWD-GLOW", "Powder, glow, lantern green", "powder", "g", "pigment", spoon="2.6", one_lot=True,
          cautions=POWDER_CAUTION, swatch="#cfeec4"),
    Stuff("PWD-FROST", "Glitter, hoarfrost", "powder", "g", "pigment", spoon="2.1", cautions=POWDER_CAUTION,
          swatch="#e3edf2"),
    Stuff("PWD-ALU", "Metal flake, bright", "powder", "g", "pigment", spoon="1.4", hazards=("H228",),
          cautions="Fine metal dust can catch fire: no flame near the open pot. " + POWDER_CAUTION, swatch="#d8dbde"),
    Stuff("SPR-BONE", "Spray paint, bone", "spray_can", "each", "paint", shelf_life=730, swatch="#ece4d3",
          hazards=("H222", "H229", "H336"), cautions=AEROSOL_CAUTION),
    Stuff("SPR-SOOT", "Spray paint, soot", "spray_can", "each", "paint", shelf_life=730, swatch="#2a2928",
          hazards=("H222", "H229", "H336"), cautions=AEROSOL_CAUTION),
    Stuff("SPR-RUST", "Spray paint, gate rust", "spray_can", "each", "paint", shelf_life=730, swatch="#7d3f27",
          hazards=("H222", "H229", "H336"), cautions=AEROSOL_CAUTION),
    Stuff("BAS-BONE", "Base paint, bone", "paint", "ml", "paint", "1.3", shelf_life=730, open_life=365,
          swatch="#eae2d0"),
    Stuff("BAS-SOOT", "Base paint, soot", "paint", "ml", "paint", "1.28", shelf_life=730, open_life=365,
          swatch="#343332"),
    Stuff("PRM-GRIP", "Bonding primer", "paint", "ml", "paint", "1.34", shelf_life=540, open_life=365,
          swatch="#cfd0cd"),
    Stuff("ALC-IPA", "Isopropyl alcohol", "solvent", "ml", "sundries", "0.786", tracks_lots=False,
          hazards=("H225", "H319", "H336"), cautions=SOLVENT_CAUTION, swatch="#eef4f8"),
    Stuff("SOL-CLEAN", "Clean-up solvent", "solvent", "ml", "sundries", "0.79", tracks_lots=False,
          hazards=("H225", "H319", "H336"), cautions=SOLVENT_CAUTION, swatch="#f2f2ea"),
    Stuff("TAP-EDGE", "Edge tape, 2 in", "consumable", "ft", "sundries", tracks_lots=False, swatch="#6f8fb3",
          measures=(("roll", "180 ft"),)),
    Stuff("CUP-QT", "Mixing cup, quart", "consumable", "each", "sundries", tracks_lots=False, swatch="#dfe5e8"),
    Stuff("GLV-NIT", "Nitrile gloves, pair", "consumable", "each", "sundries", tracks_lots=False, swatch="#3f5f8a"),
    Stuff("DSC-220", "Abrasive disc, 220", "consumable", "each", "sundries", tracks_lots=False, swatch="#a9875f"),
    Stuff("STK-MIX", "Mixing stick", "consumable", "each", "sundries", tracks_lots=False, swatch="#c9ad80"),
]
# fmt: on


@dataclass(frozen=True)
class Sold:
    """A pack of the demo: its contents as (material code, quantity, share of the price in percent)."""

    key: str
    supplier: str
    name: str
    price: str
    contents: tuple[tuple[str, str, str | None], ...]


PACKS = [
    Sold("flood-3", "resin", "Flood kit, 3 gal", "246.00", (("FLD-A", "2 gal", "60"), ("FLD-B", "1 gal", "40"))),
    Sold("table-2", "resin", "Table kit, 2 gal", "158.00", (("TBL-A", "1 gal", "55"), ("TBL-B", "1 gal", "45"))),
    Sold("satin", "resin", "Satin top coat set", "94.00", (("SAT-A", "1 qt", "70"), ("SAT-B", "8 fl oz", "30"))),
    Sold("dye-peat", "pigment", "Peat black, 4 fl oz", "17.50", (("DYE-PEAT", "4 fl oz", None),)),
    Sold("dye-chalk", "pigment", "Chalk white, 8 fl oz", "24.00", (("DYE-CHALK", "8 fl oz", None),)),
    Sold("dye-teal", "pigment", "Estuary, 4 fl oz", "18.00", (("DYE-TEAL", "4 fl oz", None),)),
    Sold("dye-umber", "pigment", "Wet bark, 4 fl oz", "17.00", (("DYE-UMBER", "4 fl oz", None),)),
    Sold("pst-chalk", "pigment", "Chalk white paste, 500 g", "31.00", (("PST-CHALK", "500 g", None),)),
    Sold("pst-slate", "pigment", "Roof slate paste, 500 g", "29.00", (("PST-SLATE", "500 g", None),)),
    Sold("pwd-moth", "pigment", "Moth silver, 200 g", "36.00", (("PWD-MOTH", "200 g", None),)),
    Sold("pwd-penny", "pigment", "Old penny, 200 g", "39.00", (("PWD-PENNY", "200 g", None),)),
    Sold("pwd-straw", "pigment", "Dry straw, 200 g", "38.00", (("PWD-STRAW", "200 g", None),)),
    Sold("pwd-glow", "pigment", "Lantern green, 100 g", "52.00", (("PWD-GLOW", "100 g", None),)),
    Sold("pwd-frost", "pigment", "Hoarfrost, 150 g", "19.00", (("PWD-FROST", "150 g", None),)),
    Sold("pwd-alu", "pigment", "Bright flake, 100 g", "27.00", (("PWD-ALU", "100 g", None),)),
    Sold("spr-bone", "paint", "Bone spray, case of 6", "45.00", (("SPR-BONE", "6 each", None),)),
    Sold("spr-soot", "paint", "Soot spray, case of 6", "45.00", (("SPR-SOOT", "6 each", None),)),
    Sold("spr-rust", "paint", "Gate rust spray, case of 6", "46.50", (("SPR-RUST", "6 each", None),)),
    Sold("bas-bone", "paint", "Bone base, gallon", "42.00", (("BAS-BONE", "1 gal", None),)),
    Sold("bas-soot", "paint", "Soot base, gallon", "42.00", (("BAS-SOOT", "1 gal", None),)),
    Sold("prm-grip", "paint", "Bonding primer, gallon", "55.00", (("PRM-GRIP", "1 gal", None),)),
    Sold("alc", "sundries", "Isopropyl alcohol, gallon", "26.00", (("ALC-IPA", "1 gal", None),)),
    Sold("clean", "sundries", "Clean-up solvent, gallon", "24.00", (("SOL-CLEAN", "1 gal", None),)),
    Sold("tape", "sundries", "Edge tape, 6 rolls", "32.40", (("TAP-EDGE", "1080 ft", None),)),
    Sold("cups", "sundries", "Quart cups, 100", "41.00", (("CUP-QT", "100 each", None),)),
    Sold("gloves", "sundries", "Gloves, 50 pairs", "18.50", (("GLV-NIT", "50 each", None),)),
    Sold("discs", "sundries", "Discs 220, 50", "27.50", (("DSC-220", "50 each", None),)),
    Sold("sticks", "sundries", "Sticks, 200", "14.00", (("STK-MIX", "200 each", None),)),
]


@dataclass(frozen=True)
class Look:
    """How a stone look of the demo is laid: additives per square foot of the flood coat, base paint and spray can."""

    name: str
    base: str
    spray: str
    additives: tuple[tuple[str, str], ...]  # material code, amount per sq ft with its unit


# fmt: off
LOOKS = [
    Look("bone vein", "BAS-BONE", "SPR-SOOT",
         (("DYE-CHALK", "1.6 ml"), ("PST-CHALK", "2 g"), ("PWD-MOTH", "1.1 g"))),
    Look("river slate", "BAS-SOOT", "SPR-BONE",
         (("PST-SLATE", "2.4 g"), ("DYE-PEAT", "0.7 ml"), ("PWD-MOTH", "1.4 g"))),
    Look("penny seam", "BAS-SOOT", "SPR-RUST",
         (("DYE-PEAT", "0.9 ml"), ("PWD-PENNY", "1.6 g"), ("PWD-STRAW", "0.6 g"))),
    Look("estuary", "BAS-BONE", "SPR-BONE",
         (("DYE-TEAL", "0.8 ml"), ("DYE-CHALK", "1.2 ml"), ("PWD-FROST", "0.5 g"))),
    Look("bark and straw", "BAS-BONE", "SPR-RUST",
         (("DYE-UMBER", "0.9 ml"), ("PWD-STRAW", "1.3 g"), ("DYE-CHALK", "0.6 ml"))),
]
# fmt: on

SYSTEMS = [
    # name, parts (role, code, parts by volume), minutes of pot life for 150 g at 25 °C, minutes of work on the top
    ("Flood, slow", (("A", "FLD-A", Decimal(2)), ("B", "FLD-B", Decimal(1))), 45, 40),
    ("Table, hard", (("A", "TBL-A", Decimal(1)), ("B", "TBL-B", Decimal(1))), 30, 25),
    ("Satin top coat", (("A", "SAT-A", Decimal(4)), ("B", "SAT-B", Decimal(1))), 120, 60),
]
