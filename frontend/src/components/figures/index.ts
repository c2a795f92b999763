export { Day, dayInWords, dayOf, daysAway, daysBetween, Moment, useToday } from "./Day";
export { Money } from "./Money";
export { alignment, Figure, Quantity, useAlignment } from "./Quantity";
export { type Amount, asPreferred, converted, unitShown, unitSpoken } from "./units";
export { useWays, type Ways, WaysProvider } from "./ways";
