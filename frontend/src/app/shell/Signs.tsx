import type { Tab } from "../features";

const PATHS: Record<Tab["sign"], string> = {
  today: "M5 4h14v17H5zM9 2v4M15 2v4M8.5 13.500l2.5 2.5 4.5-5",
  shelf: "M2 20h20M2 11h20M5 11V5h4v6M13 11V3h5v8M6 20v-5h5v5M14 20l1-6h4l1 6",
  receiving: "M3 12v9h18v-9M12 3v11M8 10l4 4.500L16 10",
  jobs: "M3 6h18v6h-9v9H3z",
  figures: "M3 20V4M3 20h18M7.5 16v-4M12 16V7M16.5 16v-6",
};

/** The sign of a tab, drawn in one line. */
export function TabSign({ sign }: { sign: Tab["sign"] }) {
  return (
    <svg
      viewBox="0 0 24 24"
      width="24"
      height="24"
      aria-hidden="true"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.8"
      strokeLinejoin="round"
      strokeLinecap="round"
    >
      <path d={PATHS[sign]} />
    </svg>
  );
}
