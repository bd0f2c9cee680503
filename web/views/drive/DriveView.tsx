import { Screen } from "../../app/Screen.tsx";

export default function DriveView() {
  return <Screen question="What will it pull in the water?" answer="" tone="open" />;
}
