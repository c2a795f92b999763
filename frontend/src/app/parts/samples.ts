import type { ChartProps } from "@/components/chart/Chart";
import type { FlowStop } from "@/components/flow/FlowList";
import type { VesselProps } from "@/components/vessel/Vessel";

export const lots: VesselProps[] = [
  {
    name: "Lot 1207 · R-4417",
    shape: "pail",
    level: 0.34,
    colour: "#d9c9a3",
    isOpen: true,
    status: "on_hold",
    useBy: "2027-03-12",
  },
  { name: "Lot 1208 · H-0091", shape: "pail", level: 0.97, colour: "#b98b52", useBy: "2027-01-31", count: 3 },
  {
    name: "Lot 1190 · none on the label",
    shape: "bottle",
    level: 0.62,
    colour: "#1f4e79",
    isOpen: true,
    isApproximate: true,
    useBy: "2026-12-20",
  },
  {
    name: "Lot 1121 · CP-22",
    shape: "jar",
    level: 0.5,
    colour: "#b0693a",
    isOpen: true,
    isExpired: true,
    useBy: "2026-10-02",
  },
  { name: "Lot 1177 · A-7", shape: "spray", level: 0.8, colour: "#2b2b2e", isOpen: true, useBy: null },
  {
    name: "Lot 1099 · P-1",
    shape: "can",
    level: 0.12,
    colour: "#e8e4da",
    isOpen: true,
    status: "rejected",
    useBy: null,
  },
  { name: "Lot 1201 · gloves", shape: "box", level: null, useBy: null },
];

export const amounts = [
  { amount: "946.352946", unit: "ml" },
  { amount: "14.25", unit: "g" },
  { amount: "2365.882365", unit: "ml" },
  { amount: "0.5", unit: "each" },
];

export const tops = [
  {
    name: "Kitchen run",
    top: {
      legs: [
        { length_in: "120", width_in: "25.5" },
        { length_in: "60", width_in: "25.5" },
      ],
      cutouts: [{ length_in: "33", width_in: "18" }],
      splash: [{ length_in: "120", height_in: "4" }],
    },
  },
  {
    name: "Island",
    top: { length_in: "72", width_in: "36", edges: [{ length_in: "216", height_in: "1.5" }] },
    colour: "#5d7f86",
  },
  { name: "Round table", top: { diameter_in: "42" } },
  { name: "Vanity, quoted", top: { area_sqft: "14.5" } },
];

const q = (amount: string) => ({ amount, unit: "ml" });

export const stops: FlowStop[] = [
  {
    key: "p1",
    kind: "pour",
    title: "Pour 311, flood coat",
    to: "/parts",
    note: "4 Nov 2026",
    quantity: q("1419.5"),
    next: [
      {
        key: "t1",
        kind: "piece",
        title: "Kitchen run",
        to: "/parts",
        note: "Job 88, A. Brandt",
        quantity: q("1100.25"),
      },
      {
        key: "t2",
        kind: "piece",
        title: "Island",
        to: "/parts",
        note: "Job 88, A. Brandt",
        quantity: q("319.25"),
      },
    ],
  },
  {
    key: "b1",
    kind: "blend",
    title: "Lot 1240, house white",
    to: "/parts",
    quantity: q("200"),
    next: [
      {
        key: "p2",
        kind: "pour",
        title: "Pour 318, accent",
        to: "/parts",
        quantity: q("40"),
        next: [{ key: "s1", kind: "board", title: "Sample board 12", quantity: q("40") }],
      },
    ],
  },
];

export const short = {
  slug: "not-enough-stock",
  title: "There is not enough flood hardener B",
  status: 409,
  detail: "This pour needs 600 mL; 400 mL are usable in the shop, so 200 mL are missing.",
  remedies: [
    { kind: "use_lot", text: "Take 200 mL of lot 1233" },
    { kind: "count_up", text: "There was more than the book said: count lot 1208 up." },
  ],
};

const month = (label: string, resin: number, colour: number) => ({
  key: label,
  label,
  values: { resin, colour },
  figures: { resin: resin.toFixed(2), colour: colour.toFixed(2) },
});

export const job: ChartProps = {
  title: "Materials per square foot, by month",
  summary: "Materials per square foot by month: between 6.10 and 8.90, lowest in September.",
  kind: "bars",
  rowLabel: "Month",
  axis: "$ per sq ft",
  series: [
    { key: "resin", label: "Resin and hardener" },
    { key: "colour", label: "Colour" },
  ],
  rows: [
    month("Jun", 5.9, 1.4),
    month("Jul", 6.4, 1.1),
    month("Aug", 6.1, 1.9),
    month("Sep", 5.2, 0.9),
    month("Oct", 6.8, 2.1),
  ],
};
