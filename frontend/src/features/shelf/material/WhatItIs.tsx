import { Link } from "react-router";
import type { Material, Pack } from "@/api/records";
import { Money, Quantity, unitShown } from "@/components/figures";
import { daysInWords, kindLabel } from "../words";
import classes from "./material.module.css";

/** A material's own figures, as its label and data sheet give them. */
export function WhatItIs({ material }: { material: Material }) {
  const { density_g_per_ml, grams_per_tsp, shelf_life_days, open_life_days } = material;
  const rows: [string, React.ReactNode][] = [
    ["Kind", kindLabel(material.kind)],
    ["Code", material.code],
    ["Kept in", unitShown(material.stock_unit)],
    ...(density_g_per_ml ? [["Density", `${density_g_per_ml} g per mL`] as [string, string]] : []),
    ...(grams_per_tsp ? [["A level teaspoon, loose", `${grams_per_tsp} g`] as [string, string]] : []),
    ...material.measures.map(({ name, as_typed, empty_g }): [string, React.ReactNode] => [
      `1 ${name}`,
      <span key={name}>
        <Quantity value={as_typed} as="kept" />
        {empty_g && <span className="soft"> · {empty_g} g empty</span>}
      </span>,
    ]),
    ["Good unopened", shelf_life_days ? daysInWords(shelf_life_days) : "as the label says"],
    ["Good once open", open_life_days ? daysInWords(open_life_days) : "no limit of its own"],
    ["Lots", material.tracks_lots ? "kept apart" : "not kept apart"],
    ...(material.single_lot_per_job ? [["One job", "one lot, for the colour"] as [string, string]] : []),
    ["Mostly from", material.main_supplier?.name ?? "nobody in particular"],
  ];
  return (
    <dl className={classes.what}>
      {rows.map(([label, value]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** The packs and kits that a material comes in. */
export function ComesIn({ packs }: { packs: readonly Pack[] }) {
  if (packs.length === 0) {
    return (
      <p className="soft">
        In no pack yet. <Link to="/shelf/packs">Packs and kits</Link>
      </p>
    );
  }
  return (
    <ul className={classes.packs}>
      {packs.map((pack) => (
        <li key={pack.id}>
          <span>
            <strong>{pack.name}</strong>
            <small>{pack.supplier.name}</small>
          </span>
          <Money value={pack.price} />
        </li>
      ))}
    </ul>
  );
}
