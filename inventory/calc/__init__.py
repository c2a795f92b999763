"""The arithmetic of the trade: plain values in, plain values out; no Django, database or clock."""
