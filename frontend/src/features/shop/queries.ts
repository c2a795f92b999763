import { useAct } from "@/api/act";
import { api } from "@/api/query";

export function useShop() {
  return api.useSuspenseQuery("get", "/api/shop/").data;
}

/** Everybody who has or had a sign-in, those without access last. */
export function usePeople() {
  const { results } = api.useSuspenseQuery("get", "/api/people/", {
    params: { query: { page_size: 200 } },
  }).data;
  return [...results].sort((a, b) => Number(b.is_active) - Number(a.is_active));
}

export type Person = ReturnType<typeof usePeople>[number];

export function useSignIn() {
  return useAct("post", "/api/session/");
}

export function useSetUp() {
  return useAct("post", "/api/set-up/");
}

export function useChangeShop(onDone: () => void) {
  return useAct("patch", "/api/shop/", { keepsVersion: true, onDone });
}

export function useAddPerson(onDone: () => void) {
  return useAct("post", "/api/people/", { onDone });
}

export function useChangePerson(id: number, onDone: () => void) {
  return useAct("patch", "/api/people/{id}/", { params: { id }, onDone });
}

/** For somebody who forgot theirs. */
export function useResetPassword(id: number, onDone: () => void) {
  return useAct("post", "/api/people/{id}/password/", { params: { id }, onDone });
}

export function useChangeOwnPassword(onDone: () => void) {
  return useAct("post", "/api/session/password/", { onDone });
}
