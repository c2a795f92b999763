import { useState } from "react";
import { Problem } from "@/api/problem";
import { Chart } from "@/components/chart/Chart";
import { QuantityField } from "@/components/entry/QuantityField";
import { Day, Money, Quantity, useAlignment } from "@/components/figures";
import { FlowList } from "@/components/flow/FlowList";
import { BigButton } from "@/components/form";
import { Cautions } from "@/components/notes/Cautions";
import { EmptyState } from "@/components/notes/EmptyState";
import { ProblemNote } from "@/components/notes/ProblemNote";
import { StatusMark } from "@/components/notes/StatusMark";
import { Swatch } from "@/components/notes/Swatch";
import { Reckoning, Why } from "@/components/notes/Why";
import { Outline } from "@/components/outline/Outline";
import { Columns, Page, Part } from "@/components/page";
import { LotRow } from "@/components/vessel/LotRow";
import { Vessel } from "@/components/vessel/Vessel";
import { amounts, job, lots, short, stops, tops } from "./samples";

function Figures() {
  return (
    <ul style={{ listStyle: "none", padding: 0, margin: 0, ...useAlignment(amounts) }}>
      {amounts.map((value) => (
        <li
          key={value.amount}
          style={{ display: "flex", justifyContent: "space-between", minHeight: 44, alignItems: "center" }}
        >
          <span>
            <Swatch colour="#2c6e8f" /> What went in
          </span>
          <Quantity value={value} />
        </li>
      ))}
    </ul>
  );
}

/** Every own part on one page, for whoever changes one. Served while developing only. */
export function PartsPage() {
  const [typed, setTyped] = useState("32 oz");
  const [first = lots[0]] = lots;
  return (
    <Page
      title="Lot 1207"
      back={{ to: "/", label: "Flood resin A" }}
      drawing={first && <Vessel {...first} size="full" />}
      marks={<StatusMark mark="look">On hold</StatusMark>}
      facts={[
        { label: "On hand", value: <Quantity value={{ amount: "2460.5", unit: "ml" }} /> },
        { label: "Set aside", value: <Quantity value={{ amount: "600", unit: "ml" }} /> },
        { label: "Use by", value: <Day value="2027-03-12" /> },
        { label: "Cost with freight", value: <Money value="84.5000" /> },
      ]}
      acts={
        <>
          <BigButton type="button">OK again</BigButton>
          <BigButton type="button" tone="stop">
            Reject
          </BigButton>
        </>
      }
    >
      <Columns>
        <Part title="Lots">
          <ul style={{ listStyle: "none", padding: 0, margin: 0 }}>
            {lots.map((lot) => (
              <li key={lot.name}>
                <LotRow
                  {...lot}
                  to="/parts"
                  onHand={{ amount: "1200.5", unit: "ml" }}
                  note="Flood resin A, shop"
                />
              </li>
            ))}
          </ul>
        </Part>
        <Part title="Figures">
          <Figures />
          <Why figure={<Money value="6.8630" per="per sq ft" />} label="how this cost came about">
            <Reckoning
              lines={[
                {
                  label: "Resin and hardener",
                  figure: <Money value="152.1000" />,
                  note: "1.71 gal at 89.00",
                },
                { label: "Colour", figure: <Money value="25.1900" /> },
              ]}
              total={{ label: "Materials", figure: <Money value="177.2900" /> }}
            />
          </Why>
          <QuantityField
            label="Flood resin A"
            material="parts"
            value={typed}
            onChange={setTyped}
            units={["fl_oz", "cup", "ml"]}
            measures={["pump"]}
          />
        </Part>
      </Columns>
      <Columns>
        {tops.slice(0, 2).map((top) => (
          <Part key={top.name} title={top.name}>
            <Outline {...top} />
          </Part>
        ))}
      </Columns>
      <Columns>
        {tops.slice(2).map((top) => (
          <Part key={top.name} title={top.name}>
            <Outline {...top} />
          </Part>
        ))}
      </Columns>
      <Columns lead>
        <Part title="Where it went">
          <FlowList label="Where lot 1207 went" stops={stops} />
        </Part>
        <Part title="Notes">
          <ProblemNote problem={new Problem(short)} remedies={{ use_lot: () => undefined }} />
          <Cautions
            acts={["mix", "heat"]}
            materials={[
              {
                name: "Flood hardener B",
                cautions: "Amine: gloves at all times.",
                hazard_codes: ["H314", "H317"],
              },
            ]}
          />
          <EmptyState title="No pour is planned" act={<BigButton type="button">Plan a pour</BigButton>}>
            Plan one, or log one that was poured already.
          </EmptyState>
        </Part>
      </Columns>
      <Chart {...job} />
    </Page>
  );
}
