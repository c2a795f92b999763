"""What a shop buys and uses: materials, suppliers, packs, resin systems."""
