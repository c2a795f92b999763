import { useId } from "react";
import { Link } from "react-router";
import { fillOf, Hatches } from "@/components/chart/Hatch";
import { converted, Quantity, useWays } from "@/components/figures";
import { toScale } from "@/components/figures/decimal";
import { StatusMark } from "@/components/notes/StatusMark";
import classes from "../figures.module.css";
import type { Mixable } from "../queries";
import own from "./reorder.module.css";

type SystemPart = Mixable["stranded"][number];

const HIGH = 110;
const WIDE = 66;

/** The parts as two tanks, as high as what is usable: the lower part goes together, what stands above it is stranded. */
function Tanks({ parts }: { parts: readonly SystemPart[] }) {
  const name = useId();
  const one = new Set(parts.map(({ usable }) => usable.unit)).size === 1;
  const most = Math.max(...parts.map(({ usable }) => toScale(usable.amount)));
  return (
    <svg viewBox={`0 0 ${parts.length * (WIDE + 18)} ${HIGH + 24}`} className={own.tanks} aria-hidden="true">
      <Hatches name={name} />
      {parts.map(({ role, usable, stranded }, i) => {
        const whole = toScale(usable.amount);
        const left = toScale(stranded?.amount ?? "0");
        const height = whole === 0 ? 0 : one ? Math.max(3, (whole / most) * HIGH) : HIGH;
        const above = whole > 0 ? (left / whole) * height : 0;
        const x = i * (WIDE + 18) + 2;
        return (
          <g key={role}>
            <rect
              x={x}
              y={HIGH - height + 2}
              width={WIDE}
              height={above}
              fill={fillOf(name, "slanted")}
              stroke="var(--ink)"
            />
            <rect
              x={x}
              y={HIGH - height + above + 2}
              width={WIDE}
              height={height - above}
              fill={fillOf(name, "solid")}
              stroke="var(--ink)"
            />
            <path d={`M${x - 2} ${HIGH + 2}h${WIDE + 4}`} stroke="var(--ink)" strokeWidth="2" />
            <text x={x + WIDE / 2} y={HIGH + 20} textAnchor="middle" className={own.tankName}>
              {role}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** Mixed resin is spoken of in gallons where liquids are read in fl oz. */
function Mixed({ quantity }: { quantity: NonNullable<Mixable["mixable"]> }) {
  const { units } = useWays();
  const gallons = units.volume === "fl_oz" ? converted(quantity, "gal") : null;
  if (!gallons || toScale(gallons.amount) < 1) return <Quantity value={quantity} />;
  return (
    <>
      <Quantity value={gallons} as="kept" places={1} />{" "}
      <span className={own.alsoMixed}>
        <Quantity value={quantity} places={0} />
      </span>
    </>
  );
}

function System({ system }: { system: Mixable }) {
  const { resin_system, mixable, stranded, runs_out_first, reason } = system;
  const left = stranded.filter((part) => toScale(part.stranded?.amount ?? "0") > 0);
  return (
    <li className={own.system}>
      <Tanks parts={stranded} />
      <div>
        <strong>{resin_system.name}</strong>
        {mixable && (
          <p className={own.mixes}>
            Mixes <Mixed quantity={mixable} />
          </p>
        )}
        {reason && <p className="soft">{reason}</p>}
        {left.length > 0 && (
          <p>
            <StatusMark mark="look">
              {runs_out_first.length > 0 ? `${runs_out_first.join(" and ")} runs out first` : "Left over"}
            </StatusMark>
          </p>
        )}
        <ul className={classes.plain}>
          {stranded.map((part) => (
            <li key={part.role} className={own.part}>
              <Link to={`/shelf/materials/${part.material}`}>{part.name}</Link>
              <span>
                <Quantity value={part.usable} />
                {toScale(part.stranded?.amount ?? "0") > 0 && (
                  <small>
                    <Quantity value={part.stranded} /> left over
                  </small>
                )}
              </span>
            </li>
          ))}
        </ul>
      </div>
    </li>
  );
}

/** What can be mixed of each resin system in its ratio, and what of its parts stays over without the other. */
export function MixableParts({ systems }: { systems: readonly Mixable[] }) {
  return (
    <ul className={classes.plain} aria-label="Resin systems">
      {systems.map((system) => (
        <System key={system.resin_system.id} system={system} />
      ))}
    </ul>
  );
}
