export { ActBar } from "./ActBar";
export { BigButton } from "./BigButton";
export { Drawn } from "./Drawn";
export { OneOf } from "./OneOf";
export { Sheet } from "./Sheet";
export { type SheetState, useSheet } from "./useSheet";
