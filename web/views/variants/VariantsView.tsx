import { Screen } from "../../app/Screen.tsx";

export default function VariantsView() {
  return <Screen question="How do the variants compare?" answer="" tone="open" />;
}
