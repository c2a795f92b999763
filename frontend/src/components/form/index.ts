export { ActBar } from "./ActBar";
export { BigButton } from "./BigButton";
export { Drawn } from "./Drawn";
export { Sheet } from "./Sheet";
export { type SheetState, useSheet } from "./useSheet";
