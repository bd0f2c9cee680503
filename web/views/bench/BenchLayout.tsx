import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { Caution } from "../../app/Caution.tsx";
import { Intake } from "./Intake.tsx";
import { LiveList } from "./live/LiveList.tsx";
import { StrandedLines } from "./live/StrandedLines.tsx";
import { RunList, RunPicker } from "./RunList.tsx";

/** Where the bench has one column only; bench.css draws it by the same width. */
const NARROW = "(max-width: 899px)";

interface BenchLayoutProps {
  readonly about: "bench" | "motor";
  /** The run or recording on show. */
  readonly children: ComponentChildren;
}

/**
 * What is on show, beside the other runs and the ways in for more. In a narrow window it stands before them in the
 * document too, so that the Tab key and a screen reader meet things in the order they are drawn in.
 */
export function BenchLayout({ about, children }: BenchLayoutProps) {
  const narrow = useMedia(NARROW);
  const main = (
    <div class="bench-main" key="main">
      {children}
    </div>
  );
  const side = (
    <div class="bench-side" key="side">
      <Intake />
      <LiveList />
      <StrandedLines />
      <RunList />
      <Caution about={about} />
    </div>
  );
  return (
    <div class="bench-layout">
      <RunPicker />
      {narrow ? [main, side] : [side, main]}
    </div>
  );
}

function useMedia(condition: string): boolean {
  const [holds, setHolds] = useState(() => matchMedia(condition).matches);
  useEffect(() => {
    const query = matchMedia(condition);
    const note = () => setHolds(query.matches);
    query.addEventListener("change", note);
    return () => query.removeEventListener("change", note);
  }, [condition]);
  return holds;
}
