import { keepPreviousData } from "@tanstack/react-query";
import { api } from "@/api/query";
import type { components } from "@/api/schema.gen";

type Schemas = components["schemas"];
export type Delivery = Schemas["DeliveryOut"];
export type DeliveryLine = Schemas["DeliveryLineOut"];
export type Basis = Schemas["BasisEnum"];
export type SpreadBy = Schemas["SpreadByEnum"];

export const DELIVERIES_SHOWN = 30;

interface Asked {
  page: number;
  search: string;
  show: string;
}

/** Deliveries, the latest first. */
export function useDeliveries({ page, search, show }: Asked) {
  return api.useQuery(
    "get",
    "/api/deliveries/",
    {
      params: {
        query: {
          page,
          page_size: DELIVERIES_SHOWN,
          ...(search !== "" && { search }),
          ...(show === "price" && { is_provisional: true, is_undone: false }),
          ...(show === "undone" && { is_undone: true }),
        },
      },
    },
    { placeholderData: keepPreviousData },
  );
}

export function useDelivery(id: number): Delivery {
  return api.useSuspenseQuery("get", "/api/deliveries/{id}/", { params: { path: { id } } }).data;
}

export const SPREADS: readonly (readonly [SpreadBy, string])[] = [
  ["value", "by cost"],
  ["mass", "by weight"],
  ["quantity", "by amount"],
];

export const BASES: Record<Basis, string> = {
  paid: "Paid",
  free: "Free",
  borrowed: "Borrowed",
  customers_own: "Customer's own",
};
