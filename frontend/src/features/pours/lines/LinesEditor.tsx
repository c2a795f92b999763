import { type ReactNode, useState } from "react";
import type { Material } from "@/api/records";
import { PickOne } from "@/components/entry/PickOne";
import { LineEditor } from "./LineEditor";
import { LineRow } from "./LineRow";
import { freshLine, type Line } from "./line";
import classes from "./lines.module.css";

export interface LinesProps {
  lines: readonly Line[];
  onChange: (lines: Line[]) => void;
  materials: ReadonlyMap<number, Material>;
  /** Where the pour is: a lot that lies elsewhere says so. */
  place: number;
  /** The error of one field: "usages.1.quantity". */
  errorOf: (field: string) => ReactNode;
  /** Said under a line: the lots it will be taken from, what is available. */
  under?: (line: Line) => ReactNode;
  /** What the field for a further material is called. */
  more?: string;
  /** Whether amounts are still a plan: nothing is wasted or weighed yet. */
  isPlan?: boolean;
  /** How an amount is called that nobody has touched. */
  untouched?: string;
}

const FIELDS = ["", ".quantity", ".weighed", ".lot", ".material", ".reason", ".bucket"];

/** What went in, or is to: a line for each amount; a tap opens the one that differs. */
export function LinesEditor(props: LinesProps) {
  const { lines, onChange, materials, place, errorOf, under, isPlan = false } = props;
  const { more = "Something else went in", untouched = isPlan ? "assumed" : "as planned" } = props;
  const [opened, setOpened] = useState<ReadonlySet<string>>(new Set());

  function toggle(key: string) {
    const next = new Set(opened);
    if (!next.delete(key)) next.add(key);
    setOpened(next);
  }

  function change(at: number, changes: Partial<Line>) {
    onChange(lines.map((line, i) => (i === at ? { ...line, ...changes } : line)));
  }

  function add(material: string) {
    if (material === "") return;
    const line = freshLine(Number(material));
    onChange([...lines, line]);
    setOpened(new Set([...opened, line.key]));
  }

  return (
    <div className={classes.editor}>
      <ul className={classes.lines} aria-label="What goes in">
        {lines.map((line, i) => {
          const material = materials.get(line.material);
          const error = FIELDS.map((field) => errorOf(`usages.${i}${field}`)).find(Boolean);
          const isWrong = FIELDS.slice(1).some((field) => errorOf(`usages.${i}${field}`));
          const isOpen = opened.has(line.key) || isWrong;
          return (
            <li key={line.key} data-wrong={error ? true : undefined}>
              <LineRow
                line={line}
                name={material?.name ?? "A material that is archived"}
                swatch={material?.swatch}
                isOpen={isOpen}
                onToggle={() => toggle(line.key)}
                assumed={untouched}
                under={under?.(line)}
                error={isOpen ? undefined : error}
              />
              {isOpen && material && (
                <LineEditor
                  line={line}
                  material={material}
                  place={place}
                  isPlan={isPlan}
                  errorOf={(field) => errorOf(`usages.${i}${field}`)}
                  onChange={(changes) => change(i, changes)}
                  onRemove={() => onChange(lines.filter((_, j) => j !== i))}
                />
              )}
            </li>
          );
        })}
      </ul>
      <PickOne
        label={more}
        placeholder="Pick a material"
        value=""
        choices={[...materials.values()].map(({ id, name, swatch }) => ({
          value: String(id),
          label: name,
          swatch,
        }))}
        error={errorOf("usages")}
        onChange={add}
      />
    </div>
  );
}
