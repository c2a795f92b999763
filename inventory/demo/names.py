"""Who and where: all invented."""

SHOP_NAME = "Heron Slip Tops"
TOWN = "Marram Quay"
TIME_ZONE = "America/Chicago"
CURRENCY = "USD"
PASSWORD = "pour-slowly"

PEOPLE = [
    # username, name, role
    ("owner", "Ines Marlowe", "owner"),
    ("crew", "Tobin Ashgrove", "crew"),
    ("wren", "Wren Hallorsen", "crew"),
    ("viewer", "Petra Lindqvale", "viewer"),
]

SUPPLIERS = [
    # key, name, lead time in days
    ("resin", "Quillfen Resins", 9),
    ("pigment", "Tallow & Reed Pigments", 6),
    ("paint", "Brindle Yard Paint", 3),
    ("sundries", "Sable Hook Sundries", 4),
]

PLACES = ["Shop", "Van"]

CUSTOMERS = [
    "Osric and Maud Fenwray",
    "Dela Thornquist",
    "The Lantern Room café",
    "Bram Ostlethwaite",
    "Halloway House (Mrs. Pell)",
    "Juno Castellane",
    "Merrin Applegarth",
    "Wick & Barrel taproom",
    "Sunniva Dray",
    "Tamsin Vole",
    "Eustace Farrow",
    "Pellbrook school kitchen",
    "Ludo Marchbanks",
    "Cosima Reave",
    "Ivo Stannage",
    "Greta Hollin",
]

TITLES = [
    "Kitchen, L with island",
    "Bathroom vanity",
    "Bar top",
    "Laundry counter",
    "Kitchen island",
    "Galley kitchen",
    "Reception desk",
    "Window sills",
    "Coffee corner",
    "Two vanities",
]
