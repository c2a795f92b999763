import { useState } from "react";
import type { Ounces } from "./reading";

const key = (material: string) => `ounces-of-${material}`;

function kept(material: string): Ounces | undefined {
  try {
    const value = localStorage.getItem(key(material));
    return value === "fl_oz" || value === "oz" ? value : undefined;
  } catch {
    return undefined;
  }
}

/** What "oz" means for this material on this device: asked once, then kept. */
export function useOunces(material: string): [Ounces | undefined, (ounces: Ounces) => void] {
  const [ounces, setOunces] = useState(() => kept(material));
  function choose(next: Ounces) {
    setOunces(next);
    try {
      localStorage.setItem(key(material), next);
    } catch {
      // A browser that keeps nothing asks again next time.
    }
  }
  return [ounces, choose];
}
