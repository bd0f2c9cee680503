import { Screen } from "../../app/Screen.tsx";

export default function BenchView() {
  return <Screen question="What does this log say?" answer="" tone="open" />;
}
