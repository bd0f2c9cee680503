import { Screen } from "../../app/Screen.tsx";

export default function TheoryView() {
  return <Screen question="How close to the ideal is it?" answer="" tone="open" />;
}
