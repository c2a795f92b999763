import { TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import { useSearchParams } from "react-router";
import { useMaterials } from "@/api/records";
import { PickOne } from "@/components/entry/PickOne";
import { EmptyState } from "@/components/notes/EmptyState";
import { Columns, type Fact, Page, Part } from "@/components/page";
import { Answer } from "../Answer";
import { Downloads } from "../Downloads";
import classes from "../figures.module.css";
import { Period } from "../Period";
import { type BalanceAsked, type MassBalance, useBalance } from "../queries";
import { useSeesMoney } from "../useSeesMoney";
import { BalanceRows } from "./BalanceRows";
import { balanceAsked } from "./balanceAsked";
import { Ledger } from "./Ledger";
import { addsUp, type Balance } from "./ledger";

/** One material, or all lots of a number; with neither, the whole shop. */
function Which({ asked }: { asked: BalanceAsked }) {
  const materials = useMaterials();
  const [, setParams] = useSearchParams();
  const [typed, setTyped] = useState(asked.lot_number ?? "");
  function only(name: "material" | "lot_number", value: string) {
    setParams((now) => {
      for (const other of ["lot", "material", "lot_number"]) now.delete(other);
      if (value) now.set(name, value);
      return now;
    });
  }
  function look(event: FormEvent) {
    event.preventDefault();
    only("lot_number", typed.trim());
  }
  return (
    <form className={`${classes.filters} no-print`} onSubmit={look}>
      <div className="cells" style={{ maxWidth: 840 }}>
        <PickOne
          label="Material"
          placeholder="All of them"
          mayClear
          choices={materials.map(({ id, name, swatch }) => ({ value: String(id), label: name, swatch }))}
          value={asked.material ? String(asked.material) : ""}
          onChange={(id) => only("material", id)}
        />
        <TextInput
          label="Or a lot number from the label"
          value={typed}
          autoComplete="off"
          enterKeyHint="search"
          onChange={(event) => setTyped(event.currentTarget.value)}
          onBlur={() => typed.trim() !== (asked.lot_number ?? "") && only("lot_number", typed.trim())}
        />
      </div>
      <Period from="From" to="Up to" />
    </form>
  );
}

function titleOf(report: MassBalance | undefined, asked: BalanceAsked): string {
  const [first] = report?.rows ?? [];
  if (asked.lot && first?.lot) return `Lot ${first.lot.number}, ${first.material.name}`;
  if (asked.lot_number) return `Lots ${asked.lot_number}`;
  if (asked.material) return first?.material.name ?? "One material";
  return "The whole shop";
}

function factsOf(report: MassBalance | undefined, asked: BalanceAsked): Fact[] {
  const rows = report?.rows ?? [];
  const off = rows.filter((row) => !addsUp(row)).length;
  return [
    { label: "Looked at", value: report && titleOf(report, asked) },
    {
      label: asked.lot || asked.lot_number || asked.material ? "Lots" : "Materials",
      value: report?.rows.length,
    },
    { label: "Do not add up", value: report && (off === 0 ? "none" : off) },
  ];
}

function Shown({
  report,
  asked,
  seesMoney,
}: {
  report: MassBalance;
  asked: BalanceAsked;
  seesMoney: boolean;
}) {
  const { rows, total } = report;
  const [only] = rows;
  if (!only) {
    return (
      <EmptyState title="No such lot">No lot bears this number. Look at the label once more.</EmptyState>
    );
  }
  const whole: Balance = rows.length === 1 ? only : total;
  const title = titleOf(report, asked);
  const hasLedger = whole.difference.quantity !== null || seesMoney;
  if (rows.length === 1) {
    return (
      <Part title={title}>
        <Ledger row={whole} seesMoney={seesMoney} title={title} />
      </Part>
    );
  }
  return (
    <Columns lead>
      {hasLedger && (
        <Part title={`${title}, all together`}>
          <Ledger row={whole} seesMoney={seesMoney} title={title} />
        </Part>
      )}
      <Part title={only.lot ? "Lot by lot" : "Material by material"}>
        <BalanceRows rows={rows} />
      </Part>
    </Columns>
  );
}

/** Whether the book adds up: what came in against what is here and what went, to the last digit. */
export function BalancePage() {
  const [params] = useSearchParams();
  const asked = balanceAsked(params);
  const balance = useBalance(asked);
  const seesMoney = useSeesMoney();
  return (
    <Page
      title="Does it add up?"
      back={{ to: "/figures", label: "Figures" }}
      facts={factsOf(balance.data, asked)}
    >
      <Which key={asked.lot_number ?? ""} asked={asked} />
      <Answer of={balance}>
        {(report) => <Shown report={report} asked={asked} seesMoney={seesMoney} />}
      </Answer>
      <Downloads
        isReady={balance.isSuccess}
        report="reports/mass-balance"
        name="does it add up"
        asked={{ ...asked }}
      />
    </Page>
  );
}
