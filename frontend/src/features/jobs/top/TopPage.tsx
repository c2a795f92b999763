import { Button } from "@mantine/core";
import { useState } from "react";
import { Link, useParams } from "react-router";
import { useAct } from "@/api/act";
import { useMayRecord } from "@/api/session";
import { WhyField } from "@/components/entry/WhyField";
import { SourcesList } from "@/components/flow/SourcesList";
import { BigButton, Drawn, Sheet, useSheet } from "@/components/form";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { StatusMark } from "@/components/notes/StatusMark";
import { Outline } from "@/components/outline/Outline";
import { Columns, Page, Part } from "@/components/page";
import { CoatStack } from "@/components/pours/CoatStack";
import { PourList } from "@/components/pours/PourList";
import { coatsOn } from "../JobTops";
import classes from "../jobs.module.css";
import { type PieceRow, useJob, usePiece, usePieceSources, usePoursOf } from "../queries";
import { areaSourceLabel } from "../words";
import { Area, FacesList } from "./TopPreview";

function Scrap({ piece, onDone }: { piece: PieceRow; onDone: () => void }) {
  const act = useAct("post", "/api/pieces/{id}/scrap/", { params: { id: piece.id }, onDone });
  const sheet = useSheet({
    act,
    initial: { reason: "" },
    toBody: (typed) => typed,
    check: ({ reason }) => ({ ...(reason.trim() === "" && { reason: "Say what became of it." }) }),
  });
  return (
    <Sheet
      sheet={sheet}
      acts={
        <BigButton tone="stop" busy={sheet.isPending}>
          The top is lost
        </BigButton>
      }
    >
      <p className="soft">What went into it stays its cost; its square feet count no more.</p>
      <WhyField
        usual={["It stayed soft", "It broke", "Wrong size"]}
        {...sheet.form.getInputProps("reason")}
      />
    </Sheet>
  );
}

function Acts({ piece }: { piece: PieceRow }) {
  const [isScrapping, setScrapping] = useState(false);
  const bringBack = useAct("post", "/api/pieces/{id}/unscrap/", { params: { id: piece.id } });
  return (
    <>
      <Button component={Link} to={`/tops/${piece.id}/edit`} variant="default" h={58} px={28} fz="1.06rem">
        Measure again
      </Button>
      {piece.is_scrapped ? (
        <BigButton
          type="button"
          tone="plain"
          busy={bringBack.isPending}
          onClick={() => bringBack.submit(undefined)}
        >
          Not lost after all
        </BigButton>
      ) : (
        <BigButton type="button" tone="stop" onClick={() => setScrapping(true)}>
          Scrap
        </BigButton>
      )}
      <ProblemNote problem={bringBack.problem} />
      <Drawn title={`Scrap ${piece.name}`} isOpen={isScrapping} onClose={() => setScrapping(false)}>
        <Scrap piece={piece} onDone={() => setScrapping(false)} />
      </Drawn>
    </>
  );
}

function faces(piece: PieceRow) {
  return {
    top: Number(piece.top_sqft),
    edges: Number(piece.edge_sqft),
    splash: Number(piece.splash_sqft),
    cutouts: Number(piece.cutout_sqft),
    counted: Number(piece.area_sqft),
  };
}

/** One top: to scale, its faces, its coats, and every lot that is in it. */
export function TopPage() {
  const id = Number(useParams().id);
  const piece = usePiece(id);
  const job = useJob(piece.job);
  const pours = usePoursOf({ piece: id });
  const sources = usePieceSources(id);
  const mayRecord = useMayRecord();
  const meant = pours.filter(({ status }) => status === "planned" || status === "completed");
  return (
    <Page
      title={piece.name}
      back={{ to: `/jobs/${job.id}`, label: job.title }}
      marks={
        piece.is_scrapped ? <StatusMark mark="stop">{`Scrapped: ${piece.scrapped_reason}`}</StatusMark> : null
      }
      facts={[
        { label: "Counted", value: <Area sqft={piece.area_sqft} /> },
        { label: "Measures", value: areaSourceLabel(piece.area_source) },
        { label: "Customer", value: piece.of_job.customer },
        { label: "Number", value: piece.number },
      ]}
      acts={mayRecord && <Acts piece={piece} />}
    >
      <Columns>
        <div className={classes.beside}>
          <Outline top={piece.shape} name={piece.name} />
          <FacesList faces={faces(piece)} rule={job.counting_rule} />
          <CoatStack coats={coatsOn(id, pours)} name={piece.name} />
          {meant.length > 0 && (
            <Part title="Pours">
              <PourList label="Pours on this top" pours={meant} namesJob={false} />
            </Part>
          )}
        </div>
        <Part title="Lots in it">
          <SourcesList rows={sources} label="Lots in this top" />
        </Part>
      </Columns>
    </Page>
  );
}
