import { useState } from "react";
import { api } from "@/api/query";
import type { components } from "@/api/schema.gen";
import { useIsOwner } from "@/api/session";
import { Quantity, useWays } from "@/components/figures";
import { BigButton, Drawn } from "@/components/form";
import { EmptyState } from "@/components/notes/EmptyState";
import { StatusMark } from "@/components/notes/StatusMark";
import { colourOf } from "@/components/notes/Swatch";
import { Page } from "@/components/page";
import classes from "./around.module.css";
import { AddSystem, ChangeSystem } from "./SystemForms";
import { degrees, recoatInWords } from "./systems";

export type System = components["schemas"]["ResinSystemOut"];

/** The mix ratio as it stands in the cup: parts side by side in their true proportions. */
function Ratio({ system }: { system: System }) {
  const ratio = system.ratio_by_volume ?? system.ratio_by_mass ?? {};
  return (
    <>
      <p>
        {system.parts.map(({ role, material }) => `${role}: ${material.name}`).join(" · ")}
        <br />
        <strong>{system.parts.map(({ role }) => ratio[role] ?? "?").join(" : ")}</strong>{" "}
        <span className="soft">{system.ratio_by_volume ? "by volume" : "by weight"}</span>
        {system.ratio_by_volume && system.ratio_by_mass && (
          <span className="soft">
            {" "}
            · {system.parts.map(({ role }) => system.ratio_by_mass?.[role] ?? "?").join(" : ")} by weight
          </span>
        )}
      </p>
      <div className={classes.ratio} aria-hidden="true">
        {system.parts.map(({ role, material }) => (
          <span
            key={role}
            style={{
              flexGrow: Number(ratio[role] ?? 1),
              background: colourOf(material.swatch) ?? "var(--face)",
            }}
          >
            {role}
          </span>
        ))}
      </div>
    </>
  );
}

function DataSheet({ system }: { system: System }) {
  const { units } = useWays();
  const warm = (celsius: string) => degrees(celsius, units.temperature);
  const rows: [string, React.ReactNode][] = [];
  const { pot_life, min_temp_c, max_temp_c } = system;
  if (pot_life)
    rows.push(["Pot life", `${pot_life.minutes} min for ${pot_life.mass_g} g at ${warm(pot_life.at_c)}`]);
  if (system.working_minutes) rows.push(["Working time on the top", `${system.working_minutes} min`]);
  if (min_temp_c || max_temp_c) {
    rows.push([
      "Works",
      [min_temp_c && `from ${warm(min_temp_c)}`, max_temp_c && `up to ${warm(max_temp_c)}`]
        .filter(Boolean)
        .join(" "),
    ]);
  }
  if (system.max_humidity_percent) rows.push(["Air up to", `${system.max_humidity_percent} % humid`]);
  if (system.max_layer_in) rows.push(["Thickest coat", `${system.max_layer_in} in`]);
  if (system.recoat_tacky_h) rows.push(["Next coat while tacky", recoatInWords(system.recoat_tacky_h)]);
  if (system.recoat_sanded_h) rows.push(["Next coat after sanding", recoatInWords(system.recoat_sanded_h)]);
  if (system.max_bucket) rows.push(["Largest bucket", <Quantity key="bucket" value={system.max_bucket} />]);
  if (system.max_colourant_percent) rows.push(["Most colour", `${system.max_colourant_percent} %`]);
  if (system.paint_dry_h) rows.push(["Paint below dries", `${system.paint_dry_h} h`]);
  if (system.tolerance_percent) rows.push(["Off ratio at most", `${system.tolerance_percent} %`]);
  return (
    <dl className={classes.sheet}>
      {rows.map(([label, value]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Which parts go together, in what ratio, and what their data sheet says. */
export function SystemsPage() {
  const { results } = api.useSuspenseQuery("get", "/api/resin-systems/", {
    params: { query: { page_size: 200 } },
  }).data;
  const isOwner = useIsOwner();
  const [chosen, setChosen] = useState<System | "new" | null>(null);
  const close = () => setChosen(null);
  return (
    <Page
      title="Resin systems"
      back={{ to: "/shelf", label: "The shelf" }}
      acts={
        isOwner && (
          <BigButton type="button" onClick={() => setChosen("new")}>
            Add a system
          </BigButton>
        )
      }
    >
      {results.length === 0 && (
        <EmptyState title="No resin system yet">
          It says which parts mix, in the ratio of their data sheet.
        </EmptyState>
      )}
      {results.map((system) => (
        <section key={system.id} className={classes.system} aria-label={system.name}>
          <div className={classes.row}>
            <h2>{system.name}</h2>
            {system.is_archived && <StatusMark mark="quiet">Archived</StatusMark>}
            {isOwner && (
              <button type="button" onClick={() => setChosen(system)}>
                Change<span className="only-read-aloud"> {system.name}</span>
              </button>
            )}
          </div>
          <Ratio system={system} />
          {system.warnings.map((warning) => (
            <p key={warning}>
              <StatusMark mark="look">Look here</StatusMark> {warning}
            </p>
          ))}
          <DataSheet system={system} />
        </section>
      ))}
      <Drawn
        title={chosen === "new" ? "Add a resin system" : (chosen?.name ?? "")}
        isOpen={chosen !== null}
        onClose={close}
      >
        {chosen === "new" && <AddSystem onDone={close} />}
        {chosen && chosen !== "new" && <ChangeSystem id={chosen.id} onDone={close} />}
      </Drawn>
    </Page>
  );
}
