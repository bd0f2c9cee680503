import type { ComponentType } from "preact";

export interface ScreenEntry {
  readonly id: string;
  /** Word in the rail. */
  readonly label: string;
  /** Path data of a 24 by 24 line drawing. */
  readonly icon: string;
  readonly load: () => Promise<{ default: ComponentType }>;
}

/** The screens in the order of the rail; each is loaded when it is first shown. */
export const SCREENS: readonly ScreenEntry[] = [
  {
    id: "overview",
    label: "Overview",
    icon: "M4 5h16M4 10h10M4 15h16M4 20h7",
    load: () => import("./overview/OverviewView.tsx"),
  },
  {
    id: "parts",
    label: "Parts",
    icon: "M12 9a3 3 0 1 0 0 6 3 3 0 0 0 0-6zM12 9c-1-5 2-6 4-6 1 3-1 5-2 6.5M15 13.5c4.5 1 5 4 4 6-3 .5-4.5-2-5.5-4M9.2 13.5c-3.5 3-6 1.5-7-.5 2-2.5 4.5-1.5 6.8-1",
    load: () => import("./parts/PartsView.tsx"),
  },
  {
    id: "bench",
    label: "Bench",
    icon: "M3 20h18M6 20V8h12v12M6 13h12M12 8V3M9 3h6",
    load: () => import("./bench/BenchView.tsx"),
  },
  {
    id: "variants",
    label: "Variants",
    icon: "M4 20V4M4 20h16M8 16v-4M13 16V7M18 16v-6",
    load: () => import("./variants/VariantsView.tsx"),
  },
  {
    id: "theory",
    label: "Theory",
    icon: "M4 20V4M4 20h16M4 20c6 0 9-4 14-14M14 5l4.5.5.5 4.5",
    load: () => import("./theory/TheoryView.tsx"),
  },
  {
    id: "drive",
    label: "Drive",
    icon: "M3 9h11v8H3zM14 11h3v4h-3M17 13h4M6 9V6h5v3",
    load: () => import("./drive/DriveView.tsx"),
  },
  {
    id: "vehicle",
    label: "Vehicle",
    icon: "M4 10a3 3 0 0 1 3-3h9a4 4 0 0 1 4 4v1a4 4 0 0 1-4 4H7a3 3 0 0 1-3-3zM8 7V4h5v3M2 9v5M15 11.5h2",
    load: () => import("./vehicle/VehicleView.tsx"),
  },
  {
    id: "shortlist",
    label: "Shortlist",
    icon: "M4 6h10M4 12h10M4 18h6M16 16l2.5 2.5L22 14M18 5v4M16 7h4",
    load: () => import("./shortlist/ShortlistView.tsx"),
  },
  {
    id: "report",
    label: "Report",
    icon: "M6 3h9l4 4v14H6zM15 3v4h4M9 11h7M9 14h7M9 17h4",
    load: () => import("./report/ReportView.tsx"),
  },
];
