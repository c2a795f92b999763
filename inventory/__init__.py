"""Lot & Pour: the stock, cost and lot-tracing tool of a shop that pours decorative epoxy."""
