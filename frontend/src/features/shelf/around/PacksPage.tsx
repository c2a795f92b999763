import { useState } from "react";
import { useSearchParams } from "react-router";
import { api } from "@/api/query";
import { type Pack, useSuppliers } from "@/api/records";
import { useIsOwner } from "@/api/session";
import { FilterRow } from "@/components/entry/FilterRow";
import { Pager, usePage } from "@/components/entry/Pager";
import { Money, Quantity } from "@/components/figures";
import { BigButton, Drawn } from "@/components/form";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import { Page } from "@/components/page";
import classes from "./around.module.css";
import { AddPack, ChangePack } from "./PackForms";

const SHOWN = 50;

/** What suppliers sell under one price: a bottle, a case of twelve, a kit of A and B. */
export function PacksPage() {
  const suppliers = useSuppliers();
  const [params] = useSearchParams();
  const page = usePage();
  const supplier = Number(params.get("supplier") ?? "");
  const { results, count } = api.useSuspenseQuery("get", "/api/packs/", {
    params: { query: { page, page_size: SHOWN, ...(supplier > 0 && { supplier }) } },
  }).data;
  const isOwner = useIsOwner();
  const [chosen, setChosen] = useState<Pack | "new" | null>(null);
  const close = () => setChosen(null);
  return (
    <Page
      title="Packs and kits"
      back={{ to: "/shelf", label: "The shelf" }}
      acts={
        isOwner && (
          <BigButton type="button" onClick={() => setChosen("new")}>
            Add a pack
          </BigButton>
        )
      }
    >
      <FilterRow
        label="Suppliers"
        name="supplier"
        choices={[["", "All"], ...suppliers.map(({ id, name }) => [String(id), name] as const)]}
      />
      {results.length === 0 && (
        <EmptyState title="No pack yet">
          A pack makes receiving a matter of two taps: it knows what is inside.
        </EmptyState>
      )}
      <ul className={classes.rows}>
        {results.map((pack) => (
          <li key={pack.id} className={classes.row}>
            <div>
              <strong>{pack.name}</strong>
              <small>{pack.supplier.name}</small>
              <ul className={classes.contents}>
                {pack.contents.map(({ material, as_typed }) => (
                  <li key={material.id}>
                    <Swatch colour={material.swatch} /> {material.name}{" "}
                    <Quantity value={as_typed} as="kept" />
                  </li>
                ))}
              </ul>
              {pack.is_archived && <StatusMark mark="quiet">Archived</StatusMark>}
            </div>
            <Money value={pack.price} />
            {isOwner && (
              <button type="button" onClick={() => setChosen(pack)}>
                Change<span className="only-read-aloud"> {pack.name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      <Pager label="packs" count={count} pageSize={SHOWN} />
      <Drawn
        title={chosen === "new" ? "Add a pack" : (chosen?.name ?? "")}
        isOpen={chosen !== null}
        onClose={close}
      >
        {chosen === "new" && <AddPack onDone={close} />}
        {chosen && chosen !== "new" && <ChangePack id={chosen.id} onDone={close} />}
      </Drawn>
    </Page>
  );
}
