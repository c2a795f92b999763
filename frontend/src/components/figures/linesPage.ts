/**
 * The page that lists the lines behind a figure, from the address that the server names for them: a figure's `movements` or
 * `usage_movements`.
 */
export function linesPage(address: string): string {
  const { pathname, search } = new URL(address, "http://shop.invalid");
  return `/figures/movements${pathname.endsWith("/cost-per-sqft/movements/") ? "/cost" : ""}${search}`;
}
