import type { LayoutRequest, ThrusterPlacement } from "../../model/vehicle/layoutRequest.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { rightingHeight } from "./axisReach.ts";
import { isConvex } from "./currentLaw.ts";
import type { LayoutModel } from "./layoutModel.ts";
import { currentsKnown } from "./layoutModel.ts";

/** Refuses what no answer can be given for: names that are alike, and two currents at one thrust. */
export function refuseUnusable({ thrusters }: LayoutRequest): void {
  thrusters.forEach(({ name, current }, i) => {
    const first = thrusters.findIndex((other) => other.name === name);
    if (first !== i)
      throw new InputProblem({
        code: "vehicle.layout-same-name",
        where: `thrusters.${i}.name`,
        found: `Two thrusters are called ${name}`,
        needed: "a name for each, by which the tables tell them apart",
        mend: "Name them by their place, such as aft starboard",
      });
    for (const side of ["forward", "reverse"] as const) {
      const thrusts = (current?.[side] ?? []).map(({ thrust }) => thrust);
      if (new Set(thrusts).size < thrusts.length)
        throw new InputProblem({
          code: "vehicle.layout-current-twice",
          where: `thrusters.${i}.current.${side}`,
          found: "The table gives two currents at one thrust",
          needed: "each thrust once",
          mend: "Take the mean of the readings",
        });
    }
  });
}

/** What to know about currents and torques that were given or are missing. */
export function suppliedWarnings(model: LayoutModel): Warning[] {
  const { request } = model;
  const found: Warning[] = [];
  const say = (code: string, where: string, text: string, mend: string) =>
    found.push(warning({ code, where, found: text, needed: "", mend }));
  const limited = request.busCurrentLimit !== undefined;
  if (limited && !currentsKnown(model))
    say(
      "vehicle.layout-no-current",
      "busCurrentLimit",
      "The limit of the bus can not be used: a thruster has no current stated",
      "Give thrust and current of each drive",
    );
  if (limited && request.hotelCurrent >= request.busCurrentLimit!)
    say(
      "vehicle.layout-hotel-over-bus",
      "hotelCurrent",
      "The rest of the vehicle draws all the current of the bus, so nothing is left for thrust",
      "Look at both numbers",
    );
  const torqueless = request.thrusters.filter(({ torquePerThrust }) => torquePerThrust === undefined);
  if (request.countReactionTorque && torqueless.length > 0)
    say(
      "vehicle.layout-no-torque",
      "thrusters",
      `The torque of ${named(torqueless)} is not stated and counts as zero`,
      "Give torque over thrust of each drive",
    );
  request.thrusters.forEach((one, i) => {
    for (const side of ["forward", "reverse"] as const) sayOfCurrent(one, i, side, say);
  });
  const height = rightingHeight(request);
  if (height !== null && height <= 0)
    say(
      "vehicle.layout-not-righting",
      "righting.centreOfBuoyancy.z",
      "The centre of buoyancy is not above the centre of mass, so the vehicle does not right itself",
      "z points down: the centre of buoyancy needs the smaller z",
    );
  return found;
}

type Say = (code: string, where: string, text: string, mend: string) => void;

function sayOfCurrent({ name, current, limits }: ThrusterPlacement, i: number, side: "forward" | "reverse", say: Say) {
  const points = current?.[side];
  if (!points) return;
  const where = `thrusters.${i}.current.${side}`;
  if (!isConvex(points))
    say(
      "vehicle.layout-current-not-convex",
      where,
      `The current of ${name} does not grow ever more steeply with thrust`,
      "For sharing the load a line below the table stands for it; the currents shown are those of the table",
    );
  const last = Math.max(...points.map(({ thrust }) => thrust));
  if (points.length > 1 && last < limits[side].value * (1 - 1e-9))
    say(
      "vehicle.layout-current-ends-early",
      where,
      `The table of ${name} ends at less than its greatest thrust`,
      "The current beyond is the last line carried on",
    );
}

const named = (thrusters: readonly ThrusterPlacement[]) => thrusters.map(({ name }) => name).join(", ");
