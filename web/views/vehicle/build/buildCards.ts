import type { ComponentType } from "preact";
import { TypedLayoutCard } from "../layout/TypedLayoutCard.tsx";
import { BodyCard } from "./BodyCard.tsx";
import { DrivesCard } from "./DrivesCard.tsx";
import { DragCard } from "./drag/DragCard.tsx";
import { MissionCard } from "./MissionCard.tsx";
import { RequirementCard } from "./RequirementCard.tsx";
import { SupplyCard } from "./SupplyCard.tsx";
import { TetherCard } from "./TetherCard.tsx";
import { ThrustersCard } from "./thrusters/ThrustersCard.tsx";

export interface BuildCard {
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
  readonly open?: boolean;
}

/** All that describes a vehicle, in the order a builder thinks of it. */
export const BUILD_CARDS: readonly BuildCard[] = [
  { id: "build-require", title: "What is asked of it", Body: RequirementCard },
  { id: "build-body", title: "Body", Body: BodyCard },
  { id: "build-drag", title: "Drag", Body: DragCard },
  { id: "build-thrusters", title: "Thrusters", Body: ThrustersCard },
  { id: "build-drives", title: "Drives", Body: DrivesCard },
  { id: "build-supply", title: "Supply", Body: SupplyCard },
  { id: "build-tether", title: "Tether", Body: TetherCard },
  { id: "build-mission", title: "Mission", Body: MissionCard },
  { id: "build-typed-layout", title: "The layout with thrusts you type", Body: TypedLayoutCard },
];
