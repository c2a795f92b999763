/** What a material comes in, as a section through the container. */
export type VesselShape = "pail" | "bottle" | "jar" | "can" | "spray" | "box";

export interface Section {
  /** The inside, closed: what can be filled. */
  inside: string;
  /** The wall as drawn: open at the top where a lid belongs. */
  wall: string;
  /** The lid, drawn when the container is unopened. */
  lid: string;
  /** Where the stuff begins and ends, in the 64 by 84 drawing. */
  floor: number;
  brim: number;
}

/** In a drawing 64 wide and 84 high. */
export const SECTIONS: Record<VesselShape, Section> = {
  pail: {
    inside: "M9 18H55L50 78H14Z",
    wall: "M7 18H10L14.5 78H49.500L54 18H57",
    lid: "M6 18V11H58V18Z",
    floor: 78,
    brim: 18,
  },
  bottle: {
    inside: "M25 14H39V26C48 29 52 34 52 42V78H12V42C12 34 16 29 25 26Z",
    wall: "M25 14V26C16 29 12 34 12 42V78H52V42C52 34 48 29 39 26V14",
    lid: "M23 14V5H41V14Z",
    floor: 78,
    brim: 22,
  },
  jar: {
    inside: "M12 26H52V74Q52 78 48 78H16Q12 78 12 74Z",
    wall: "M12 26V74Q12 78 16 78H48Q52 78 52 74V26",
    lid: "M9 26V16H55V26Z",
    floor: 78,
    brim: 26,
  },
  can: {
    inside: "M11 18H53V78H11Z",
    wall: "M11 16V78H53V16M9 78H55",
    lid: "M9 18V13H55V18Z",
    floor: 78,
    brim: 18,
  },
  spray: {
    inside: "M17 30Q17 22 26 20H38Q47 22 47 30V78H17Z",
    wall: "M26 20Q17 22 17 30V78H47V30Q47 22 38 20ZM27 20V13H37V20M15 78H49",
    lid: "M22 20V7Q22 4 25 4H39Q42 4 42 7V20Z",
    floor: 78,
    brim: 22,
  },
  box: {
    inside: "M8 26H56V78H8Z",
    wall: "M8 26V78H56V26",
    lid: "M6 26V20H58V26Z",
    floor: 78,
    brim: 26,
  },
};

/** The container that a kind of material usually comes in. */
export function shapeFor(kind: string): VesselShape {
  switch (kind) {
    case "resin":
    case "hardener":
      return "pail";
    case "dye":
    case "solvent":
      return "bottle";
    case "powder":
    case "paste":
      return "jar";
    case "spray_can":
      return "spray";
    case "paint":
      return "can";
    default:
      return "box";
  }
}

/** How high the stuff stands, in the drawing: a share of 0 to 1 of the room between floor and brim. */
export function surfaceAt(section: Section, level: number): number {
  const held = Math.min(1, Math.max(0, level));
  return section.floor - held * (section.floor - section.brim);
}

/** A level as a person says it: "about a third left". */
export function levelInWords(level: number): string {
  if (level <= 0) return "empty";
  if (level < 0.06) return "nearly empty";
  const marks: [number, string][] = [
    [0.125, "about an eighth left"],
    [0.25, "about a quarter left"],
    [1 / 3, "about a third left"],
    [0.5, "about half left"],
    [2 / 3, "about two thirds left"],
    [0.75, "about three quarters left"],
    [0.875, "nearly full"],
  ];
  if (level >= 0.96) return "full";
  const nearest = marks.reduce((best, mark) =>
    Math.abs(mark[0] - level) < Math.abs(best[0] - level) ? mark : best,
  );
  return nearest[1];
}
