import { TextInput } from "@mantine/core";
import type { ReactNode } from "react";
import { OneOf } from "@/components/form";
import { AREA_SOURCES, type AreaSource } from "../words";
import { FaceRows } from "./FaceRows";
import type { CountingRule } from "./faces";
import { TopPreview } from "./TopPreview";
import classes from "./top.module.css";
import { drawable, FORMS, type Form, type TopTyped } from "./topTyped";

interface TopFieldsProps {
  top: TopTyped;
  onChange: (top: TopTyped) => void;
  /** The error of one of the top's fields, by its name within the top: "legs.1.length_in". */
  errorOf: (field: string) => ReactNode;
  rule: CountingRule;
  /** Whether several alike can be made at once. */
  hasCount?: boolean;
}

/** The measures of the chosen form. */
function Measures({ top, onChange, errorOf }: Pick<TopFieldsProps, "top" | "onChange" | "errorOf">) {
  const field = (name: "length_in" | "width_in" | "diameter_in" | "area_sqft", label: string) => (
    <TextInput
      label={label}
      inputMode="decimal"
      autoComplete="off"
      value={top[name]}
      error={errorOf(name)}
      onChange={(event) => onChange({ ...top, [name]: event.currentTarget.value })}
    />
  );
  const leg = (at: 0 | 1, name: "length_in" | "width_in", label: string) => (
    <TextInput
      key={`${at} ${name}`}
      label={label}
      inputMode="decimal"
      autoComplete="off"
      value={top.legs[at][name]}
      error={errorOf(`legs.${at}.${name}`)}
      onChange={(event) => {
        const changed = { ...top.legs[at], [name]: event.currentTarget.value };
        onChange({ ...top, legs: at === 0 ? [changed, top.legs[1]] : [top.legs[0], changed] });
      }}
    />
  );
  return (
    <div className="cells" style={{ "--cell-width": "150px" } as React.CSSProperties}>
      {top.form === "rectangle" && (
        <>
          {field("length_in", "Length, in")}
          {field("width_in", "Width, in")}
        </>
      )}
      {top.form === "l" && (
        <>
          {leg(0, "length_in", "First leg, in")}
          {leg(0, "width_in", "its width, in")}
          {leg(1, "length_in", "Second leg, in")}
          {leg(1, "width_in", "width of the second, in")}
        </>
      )}
      {top.form === "round" && field("diameter_in", "Across, in")}
      {top.form === "area" && field("area_sqft", "Area, sq ft")}
    </div>
  );
}

/** The longest side of the top, which a front edge or a splash strip usually has. */
function longest(top: TopTyped): string {
  if (top.form === "rectangle") return top.length_in;
  return top.form === "l" ? top.legs[0].length_in : "";
}

/** One top: its form and measures, what lies beside it, drawn to scale while it is typed. */
export function TopFields({ top, onChange, errorOf, rule, hasCount = false }: TopFieldsProps) {
  const along = longest(top);
  const upright = [
    ["length_in", "Length, in"],
    ["height_in", "Height, in"],
  ] as const;
  const flat = [
    ["length_in", "Length, in"],
    ["width_in", "Width, in"],
  ] as const;
  return (
    <div className={classes.topFields}>
      <div className={classes.typing}>
        <div className="cells" style={{ "--cell-width": "150px" } as React.CSSProperties}>
          <TextInput
            label="Name of the top"
            autoComplete="off"
            value={top.name}
            error={errorOf("name")}
            onChange={(event) => onChange({ ...top, name: event.currentTarget.value })}
          />
          {hasCount && (
            <TextInput
              label="How many alike"
              inputMode="numeric"
              autoComplete="off"
              value={top.count}
              error={errorOf("count")}
              onChange={(event) => onChange({ ...top, count: event.currentTarget.value })}
            />
          )}
        </div>
        <OneOf
          label="Form"
          choices={FORMS}
          value={top.form}
          onChange={(form) => onChange({ ...top, form: form as Form })}
        />
        <Measures top={top} onChange={onChange} errorOf={errorOf} />
        <FaceRows
          legend="Edges that get a coat"
          one="edge"
          rows={top.edges.map((edge) => ({ ...edge }))}
          measures={upright}
          fresh={{ length_in: along, height_in: "1.5" }}
          errorOf={(row, field) => errorOf(`edges.${row}.${field}`)}
          onChange={(edges) => onChange({ ...top, edges })}
        />
        <FaceRows
          legend="Splash strips"
          one="splash strip"
          rows={top.splash.map((strip) => ({ ...strip }))}
          measures={upright}
          fresh={{ length_in: along, height_in: "4" }}
          errorOf={(row, field) => errorOf(`splash.${row}.${field}`)}
          onChange={(splash) => onChange({ ...top, splash })}
        />
        <FaceRows
          legend="Cut-outs"
          one="cut-out"
          rows={top.cutouts.map((cutout) => ({ ...cutout }))}
          measures={flat}
          fresh={{ length_in: "", width_in: "" }}
          errorOf={(row, field) => errorOf(`cutouts.${row}.${field}`)}
          onChange={(cutouts) => onChange({ ...top, cutouts })}
        />
        <OneOf
          label="The measures are"
          choices={AREA_SOURCES}
          value={top.area_source}
          onChange={(source) => onChange({ ...top, area_source: source as AreaSource })}
        />
      </div>
      <TopPreview top={drawable(top)} name={top.name} rule={rule} count={Number(top.count) || 1} />
    </div>
  );
}
