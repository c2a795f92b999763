import type { ReactNode } from "react";
import { Link } from "react-router";
import { type Amount, Day, Quantity } from "../figures";
import { LotMarks } from "../notes/StatusMark";
import { Vessel, type VesselProps } from "./Vessel";
import classes from "./vessel.module.css";

interface LotRowProps extends Omit<VesselProps, "size"> {
  /** The lot's page. */
  to?: string;
  onHand?: Amount | null;
  /** Beneath the name: the material, the place. */
  note?: ReactNode;
  isProvisional?: boolean;
  /** What can be done right here. */
  act?: ReactNode;
}

/** A lot in a list: its vessel, its name and how it stands, what is left and until when. */
export function LotRow({ to, onHand, note, isProvisional = false, act, ...vessel }: LotRowProps) {
  const { name, status = "usable", isOpen = false, isExpired = false, useBy } = vessel;
  return (
    <div className={classes.row}>
      <Vessel {...vessel} size="row" />
      <div className={classes.what}>
        {to ? <Link to={to}>{name}</Link> : <span>{name}</span>}
        {note && <small>{note}</small>}
        <LotMarks status={status} isExpired={isExpired} isOpen={isOpen} isProvisional={isProvisional} />
      </div>
      <div className={classes.left}>
        <Quantity value={onHand} />
        {useBy && (
          <small>
            <Day value={useBy} away />
          </small>
        )}
      </div>
      {act && <div className={classes.act}>{act}</div>}
    </div>
  );
}
