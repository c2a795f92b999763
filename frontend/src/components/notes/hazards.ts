/** The statements behind hazard codes seen on such goods: UN Globally Harmonized System (GHS), annex 3. */
const STATEMENTS: Record<string, string> = {
  H222: "extremely flammable aerosol",
  H225: "highly flammable liquid and vapour",
  H226: "flammable liquid and vapour",
  H228: "flammable solid",
  H229: "pressurised container: may burst if heated",
  H302: "harmful if swallowed",
  H314: "burns skin and eyes",
  H315: "irritates skin",
  H317: "may cause an allergic skin reaction",
  H318: "damages eyes",
  H319: "irritates eyes",
  H334: "may cause allergy or asthma when breathed in",
  H336: "may make drowsy or dizzy",
  H410: "very toxic to water life, lasting",
  H411: "toxic to water life, lasting",
  H412: "harmful to water life, lasting",
};

export function hazardInWords(code: string): string {
  const statement = STATEMENTS[code.toUpperCase()];
  return statement ? `${code}: ${statement}` : code;
}

export type HandlingAct = "mix" | "spray" | "sand" | "heat";

/** What holds for the act itself, whatever the product. */
export const ACT_CAUTIONS: Record<HandlingAct, string> = {
  mix: "Nitrile gloves, eyes covered, fresh air. Never leave a mixed bucket standing: pour it out or split it.",
  spray: "No torch, heat gun, heater or spark while mist or vapour is in the air.",
  sand: "A dust mask, and only cured resin. Old tops may hold lead, asbestos or stone dust: have them tested first.",
  heat: "No flame or heat gun after a spray or alcohol mist until the data sheet's conditions and the air allow it.",
};

/** The codes whose words are known here; others are shown as they are. */
export const HAZARD_CODES = Object.keys(STATEMENTS);
