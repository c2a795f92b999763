import { Textarea, TextInput } from "@mantine/core";
import type { UseFormReturnType } from "@mantine/form";
import { useState } from "react";
import { useAct } from "@/api/act";
import { api } from "@/api/query";
import type { Supplier } from "@/api/records";
import { useIsOwner } from "@/api/session";
import { BigButton, Drawn, Sheet, useSheet } from "@/components/form";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { Page } from "@/components/page";
import { ArchiveAct } from "./ArchiveAct";
import classes from "./around.module.css";

type Typed = { name: string; lead_time_days: string; phone: string; email: string; note: string };

const toBody = ({ lead_time_days, ...typed }: Typed) => ({
  ...typed,
  lead_time_days: Number(lead_time_days),
});

const check = ({ name, lead_time_days }: Typed) => ({
  ...(name.trim() === "" && { name: "Say what it is called." }),
  ...(!/^\d+$/.test(lead_time_days.trim()) && { lead_time_days: "Type whole days, such as 5." }),
});

function Fields({ form }: { form: UseFormReturnType<Typed> }) {
  return (
    <div className="cells">
      <TextInput label="Name" autoComplete="off" {...form.getInputProps("name")} />
      <TextInput
        label="Lead time in days"
        description="From order to door."
        inputMode="numeric"
        {...form.getInputProps("lead_time_days")}
      />
      <TextInput label="Phone" inputMode="tel" autoComplete="off" {...form.getInputProps("phone")} />
      <TextInput label="Email" inputMode="email" autoComplete="off" {...form.getInputProps("email")} />
      <Textarea label="Note" autosize minRows={2} {...form.getInputProps("note")} />
    </div>
  );
}

function AddSupplier({ onDone }: { onDone: () => void }) {
  const sheet = useSheet({
    act: useAct("post", "/api/suppliers/", { onDone }),
    initial: { name: "", lead_time_days: "", phone: "", email: "", note: "" } as Typed,
    toBody,
    draft: "supplier-new",
    check,
  });
  return (
    <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Add the supplier</BigButton>}>
      <Fields form={sheet.form} />
    </Sheet>
  );
}

function ChangeSupplier({ id, onDone }: { id: number; onDone: () => void }) {
  const now = api.useSuspenseQuery("get", "/api/suppliers/{id}/", { params: { path: { id } } }).data;
  const options = { params: { id }, onDone };
  const archive = useAct("post", "/api/suppliers/{id}/archive/", options);
  const unarchive = useAct("post", "/api/suppliers/{id}/unarchive/", options);
  const { name, phone, email, note } = now;
  const sheet = useSheet({
    act: useAct("patch", "/api/suppliers/{id}/", { ...options, keepsVersion: true }),
    initial: { name, phone, email, note, lead_time_days: String(now.lead_time_days) } as Typed,
    toBody,
    check,
  });
  return (
    <>
      <Sheet sheet={sheet} acts={<BigButton busy={sheet.isPending}>Save</BigButton>}>
        <Fields form={sheet.form} />
      </Sheet>
      <ArchiveAct isArchived={now.is_archived} archive={archive} unarchive={unarchive} />
    </>
  );
}

/** Who sells to the shop, and how long it takes. */
export function SuppliersPage() {
  const { results } = api.useSuspenseQuery("get", "/api/suppliers/", {
    params: { query: { page_size: 200 } },
  }).data;
  const isOwner = useIsOwner();
  const [chosen, setChosen] = useState<Supplier | "new" | null>(null);
  const close = () => setChosen(null);
  return (
    <Page
      title="Suppliers"
      back={{ to: "/shelf", label: "The shelf" }}
      acts={
        isOwner && (
          <BigButton type="button" onClick={() => setChosen("new")}>
            Add a supplier
          </BigButton>
        )
      }
    >
      {results.length === 0 && (
        <EmptyState title="No supplier yet">Add one; then its packs and kits.</EmptyState>
      )}
      <ul className={classes.rows}>
        {results.map((supplier) => (
          <li key={supplier.id} className={classes.row}>
            <span>
              <strong>{supplier.name}</strong>
              <small>
                {[
                  `${supplier.lead_time_days} ${supplier.lead_time_days === 1 ? "day" : "days"} to the door`,
                  supplier.phone,
                  supplier.email,
                  supplier.note,
                ]
                  .filter(Boolean)
                  .join(" · ")}
              </small>
              {supplier.is_archived && <StatusMark mark="quiet">Archived</StatusMark>}
            </span>
            {isOwner && (
              <button type="button" onClick={() => setChosen(supplier)}>
                Change<span className="only-read-aloud"> {supplier.name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      <Drawn
        title={chosen === "new" ? "Add a supplier" : (chosen?.name ?? "")}
        isOpen={chosen !== null}
        onClose={close}
      >
        {chosen === "new" && <AddSupplier onDone={close} />}
        {chosen && chosen !== "new" && <ChangeSupplier id={chosen.id} onDone={close} />}
      </Drawn>
    </Page>
  );
}
