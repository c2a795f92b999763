import { useId } from "react";
import { dayInWords } from "../figures";
import { levelInWords, SECTIONS, type Section, surfaceAt, type VesselShape } from "./shapes";
import classes from "./vessel.module.css";

export type LotStatus = "usable" | "on_hold" | "rejected";

export interface VesselProps {
  /** What this lot is called: "Lot 1207, flood resin A". */
  name: string;
  shape: VesselShape;
  /** How full it is, 0 to 1; null where nobody knows. */
  level: number | null;
  /** The material's own colour (#rrggbb). */
  colour?: string | null | undefined;
  status?: LotStatus;
  isOpen?: boolean;
  isExpired?: boolean;
  isApproximate?: boolean;
  useBy?: string | null;
  /** How many such containers there are. */
  count?: number;
  size?: "row" | "card" | "full";
}

/** The drawing in words. */
export function vesselInWords(props: VesselProps): string {
  const { name, level, status = "usable", isOpen, isExpired, useBy, count = 1 } = props;
  const marks = [
    level === null ? "level not known" : levelInWords(level),
    isOpen ? "open" : "unopened",
    ...(count > 1 ? [`${count} containers`] : []),
    ...(status === "on_hold" ? ["on hold"] : []),
    ...(status === "rejected" ? ["rejected"] : []),
    ...(isExpired ? ["past its use-by"] : []),
    ...(useBy ? [`use by ${dayInWords(useBy)}`] : []),
  ];
  return `${name}: ${marks.join(", ")}`;
}

/** The stuff inside, up to its surface. */
function Contents({
  section,
  level,
  fill,
  clip,
}: {
  section: Section;
  level: number;
  fill: string;
  clip: string;
}) {
  const surface = surfaceAt(section, level);
  return (
    <g clipPath={`url(#${clip})`}>
      <rect x="0" y={surface} width="64" height={84 - surface} fill={fill} />
      <line x1="0" x2="64" y1={surface} y2={surface} className={classes.surface} />
    </g>
  );
}

/** The drawing sign for a liquid's level, standing on the surface. */
function LevelMark({ section, level }: { section: Section; level: number }) {
  if (level <= 0.04 || level >= 0.97) return null;
  const surface = surfaceAt(section, level);
  return (
    <path
      d={`M28 ${surface - 6}h8l-4 5.5zM29.5 ${surface + 3}h5M31 ${surface + 5.5}h2`}
      className={classes.mark}
    />
  );
}

/** A lot as its container in section: how full, open or sealed, held, rejected or expired. */
export function Vessel(props: VesselProps) {
  const {
    shape,
    level,
    colour,
    status = "usable",
    isOpen = false,
    isExpired = false,
    isApproximate = false,
  } = props;
  const { count = 1, size = "card" } = props;
  const id = useId();
  const section = SECTIONS[shape];
  return (
    <svg
      className={classes.vessel}
      data-size={size}
      data-status={status}
      data-expired={isExpired || undefined}
      viewBox="-4 0 82 84"
      role="img"
      aria-label={vesselInWords(props)}
    >
      <defs>
        <clipPath id={`${id}clip`}>
          <path d={section.inside} />
        </clipPath>
        <pattern
          id={`${id}hold`}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="3.5" height="7" className={classes.tape} />
        </pattern>
      </defs>
      {count > 1 && <path d={section.wall} transform="translate(9 0)" className={classes.behind} />}
      <path d={section.inside} className={classes.inside} />
      {level !== null && (
        <Contents section={section} level={level} fill={colour ?? "var(--face-deep)"} clip={`${id}clip`} />
      )}
      {level === null && (
        <text x="32" y="56" className={classes.unknown}>
          ?
        </text>
      )}
      <path d={section.wall} className={classes.wall} strokeDasharray={isApproximate ? "5 2.5" : undefined} />
      {!isOpen && <path d={section.lid} className={classes.lid} />}
      {isExpired && status === "usable" && <path d="M8 82L56 14" className={classes.expired} />}
      {status === "on_hold" && (
        <path d="M2 31L62 23V34L2 42Z" fill={`url(#${id}hold)`} className={classes.band} />
      )}
      {status === "rejected" && <path d="M8 20L56 80M56 20L8 80" className={classes.cross} />}
      {level !== null && <LevelMark section={section} level={level} />}
      {count > 1 && (
        <text x="75" y="80" className={classes.count}>
          {count}×
        </text>
      )}
    </svg>
  );
}
