import { Quantity } from "@/components/figures";

/** An area in the shop's unit: one place is enough. */
export function Area({ sqft }: { sqft: string }) {
  return <Quantity value={{ amount: sqft, unit: "sqft" }} places={1} />;
}
