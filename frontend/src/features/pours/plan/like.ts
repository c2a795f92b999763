import type { PourRow } from "../queries";

/** The square feet under a pour, as decimal text. */
export function areaOf(pour: Pick<PourRow, "pieces">): string {
  const millionths = pour.pieces.reduce((sum, { area_sqft }) => sum + BigInt(area_sqft.replace(".", "")), 0n);
  const digits = millionths.toString().padStart(7, "0");
  return `${digits.slice(0, -6)}.${digits.slice(-6)}`;
}

/** Earlier pours, the likeliest to be like the new one first: of the same job, of the same customer, then the latest. */
export function nearestFirst(
  pours: readonly PourRow[],
  jobs: readonly number[],
  customers: readonly string[],
): PourRow[] {
  const far = ({ pieces }: PourRow) => {
    if (pieces.some(({ job }) => jobs.includes(job))) return 0;
    return pieces.some(({ customer_name }) => customers.includes(customer_name)) ? 1 : 2;
  };
  return [...pours].sort((a, b) => far(a) - far(b));
}
