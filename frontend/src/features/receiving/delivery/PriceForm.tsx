import { useRef } from "react";
import { useAct } from "@/api/act";
import { MoneyField, moneySaid } from "@/components/entry/MoneyField";
import { decimalParts } from "@/components/figures/decimal";
import { BigButton, Sheet, useSheet } from "@/components/form";
import type { Delivery } from "../queries";
import classes from "../receiving.module.css";
import { type Group, groupsOf } from "./groups";

/** The groups whose price was typed anew. */
export function pricedAnew(groups: readonly Group[], costs: Record<string, string>): Group[] {
  return groups.filter(({ key, cost }) => {
    const typed = moneySaid(costs[key] ?? "");
    if (typed === undefined) return false;
    return cost == null || JSON.stringify(decimalParts(typed)) !== JSON.stringify(decimalParts(cost));
  });
}

/** The bill is here, or was wrong: what each pack cost, before charges. */
export function PriceForm({ delivery, onDone }: { delivery: Delivery; onDone: () => void }) {
  const groups = groupsOf(delivery.lines);
  const sent = useRef<Group[]>([]);
  const act = useAct("post", "/api/deliveries/{id}/price/", { params: { id: delivery.id }, onDone });
  const sheet = useSheet({
    act,
    initial: {
      costs: Object.fromEntries(
        groups.map(({ key, cost }) => [
          key,
          cost && !/^0*\.?0*$/.test(cost) ? cost.replace(/(\.\d\d)0+$/, "$1") : "",
        ]),
      ) as Record<string, string>,
    },
    toBody: ({ costs }) => {
      sent.current = pricedAnew(groups, costs);
      return {
        lines: sent.current.map(({ key, named }) => ({ ...named, cost: moneySaid(costs[key] ?? "") ?? "" })),
      };
    },
    draft: `price-of-delivery-${delivery.id}`,
    fieldFor: (name) => {
      const at = /^lines\.(\d+)/.exec(name);
      const group = at && sent.current[Number(at[1])];
      return group ? `costs.${group.key}` : name;
    },
    check: ({ costs }) => {
      const unread = groups.filter(
        ({ key }) => (costs[key] ?? "") !== "" && moneySaid(costs[key] ?? "") === undefined,
      );
      const wrong = Object.fromEntries(
        unread.map(({ key }) => [`costs.${key}`, "Type a sum, such as 128.50."]),
      );
      const [first] = groups;
      if (first && unread.length === 0 && pricedAnew(groups, costs).length === 0) {
        wrong[`costs.${first.key}`] = "Type at least one price that is new.";
      }
      return wrong;
    },
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Book the price</BigButton>}>
      <p className="soft">
        Before freight and discounts. What was used since takes its share of the difference. Empty: it still
        follows.
      </p>
      <div className={classes.stack}>
        {groups.map(({ key, title }) => (
          <MoneyField key={key} label={title} {...sheet.form.getInputProps(`costs.${key}`)} />
        ))}
      </div>
    </Sheet>
  );
}
