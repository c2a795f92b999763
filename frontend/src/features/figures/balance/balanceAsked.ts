import type { BalanceAsked } from "../queries";

/** What the page's address asks for: one lot, all lots of a number, all of a material, or the whole shop. */
export function balanceAsked(params: URLSearchParams): BalanceAsked {
  const asked: BalanceAsked = {};
  const id = (name: string) => {
    const number = Number(params.get(name) ?? "");
    return Number.isInteger(number) && number > 0 ? number : undefined;
  };
  const day = (name: string) => {
    const said = params.get(name) ?? "";
    return /^\d{4}-\d{2}-\d{2}$/.test(said) ? said : undefined;
  };
  const [lot, material, lotNumber] = [id("lot"), id("material"), params.get("lot_number")?.trim()];
  if (lot) asked.lot = lot;
  else if (lotNumber) asked.lot_number = lotNumber;
  else if (material) asked.material = material;
  const [from, to] = [day("from"), day("to")];
  if (from) asked.from = from;
  if (to) asked.to = to;
  return asked;
}
