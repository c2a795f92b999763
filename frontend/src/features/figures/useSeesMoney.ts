import { useIsOwner } from "@/api/session";
import { useWays } from "@/components/figures";

/** Whether money stands on the page: for owners, and not while a customer is looking. */
export function useSeesMoney(): boolean {
  const isOwner = useIsOwner();
  return useWays().showsMoney && isOwner;
}
