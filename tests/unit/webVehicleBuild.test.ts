import { describe, expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { ShapeItem } from "../../shared/model/vehicle/dragShapes.ts";
import { VehicleRequirement } from "../../shared/model/vehicle/requirement.ts";
import { VehicleBuild } from "../../shared/model/vehicle/vehicleBuild.ts";
import { axisDrag } from "../../shared/vehicle/drag/axisDrag.ts";
import {
  freeName,
  MOST_BUILDS,
  nameGap,
  shownPlace,
  withBuild,
  withCopy,
  withVehicles,
} from "../../web/views/vehicle/build/buildModel.ts";
import {
  givenDrag,
  resolvedDrag,
  withAddedMass,
  withDrag,
  withoutDrag,
} from "../../web/views/vehicle/build/drag/directions.ts";
import { shapeRowText } from "../../web/views/vehicle/build/drag/dragText.ts";
import { draftOf, shapeOf, withKind, withValue } from "../../web/views/vehicle/build/drag/shapeDraft.ts";
import { SHAPE_KINDS } from "../../web/views/vehicle/build/drag/shapeKinds.ts";
import { usersOf, withDrive, withDriveAdded, withoutDrive } from "../../web/views/vehicle/build/driveEdits.ts";
import {
  legTime,
  withDoes,
  withLeg,
  withLegAdded,
  withLegMoved,
  withMission,
  withoutLeg,
} from "../../web/views/vehicle/build/missionEdits.ts";
import { withDemand } from "../../web/views/vehicle/build/requirementModel.ts";
import { startingBuild } from "../../web/views/vehicle/build/startingBuild.ts";
import { STARTING_LAYOUTS, USUAL_SIZE } from "../../web/views/vehicle/build/startingLayouts.ts";
import { cellText, readCell } from "../../web/views/vehicle/build/thrusters/cellText.ts";
import { anglesOf, directionOf, pushInWords } from "../../web/views/vehicle/build/thrusters/direction.ts";
import {
  withoutThruster,
  withThruster,
  withThrusterAdded,
  withThrusterMirrored,
} from "../../web/views/vehicle/build/thrusters/thrusterEdits.ts";

const start = (layout = "cornersAndPair") =>
  startingBuild({ name: "V", layout, size: USUAL_SIZE, mass: 10, motorId: "m", packId: "p", propeller: "sanded" });
const DABCHICK = VehicleBuild.parse(DEMO.vehicles[0]);
const LARGER = VehicleBuild.parse(DEMO.vehicles[1]);
const DEGREE = Math.PI / 180;

describe("the vehicles of a project", () => {
  test.each([
    { wanted: "Dabchick", taken: [], is: "Dabchick" },
    { wanted: "Dabchick", taken: ["Dabchick"], is: "Dabchick 2" },
    { wanted: "Dabchick", taken: ["Dabchick", "Dabchick 2"], is: "Dabchick 3" },
    { wanted: "  ", taken: [], is: "Vehicle" },
  ])("the name $wanted beside $taken becomes $is", ({ wanted, taken, is }) => expect(freeName(wanted, taken)).toBe(is));

  test("a name that is empty or taken is refused with the reason", () => {
    expect(nameGap(" ", [])).toMatch(/name/);
    expect(nameGap("A ", ["A"])).toMatch(/there already/);
    expect(nameGap("B", ["A"])).toBe("");
  });

  test("a copy stands behind its original under a name of its own, and there are never more than eight", () => {
    const copied = withCopy([DABCHICK, LARGER], 0);
    expect(copied.map(({ name }) => name)).toEqual([DABCHICK.name, `${DABCHICK.name}, copy`, LARGER.name]);
    const full = Array.from({ length: MOST_BUILDS }, () => DABCHICK);
    expect(withCopy(full, 0)).toHaveLength(MOST_BUILDS);
  });

  test("the last vehicle is shown where the one asked for is gone, and none where there is none", () => {
    expect([shownPlace([DABCHICK, LARGER], 5), shownPlace([DABCHICK], 0), shownPlace([], 3)]).toEqual([1, 0, -1]);
    expect(withBuild([DABCHICK], 3, LARGER)).toEqual([DABCHICK]);
  });

  test("a project whose last vehicle goes is as one that never had any", () => {
    expect(withVehicles({ name: "P", vehicles: [DABCHICK] }, [])).toEqual({ name: "P" });
  });
});

describe("a vehicle to begin with", () => {
  test.each(STARTING_LAYOUTS)("$label is a whole document whose thrusters differ in name", ({ id }) => {
    const build = start(id);
    expect(VehicleBuild.safeParse(build).success).toBe(true);
    expect(new Set(build.thrusters.map(({ name }) => name)).size).toBe(build.thrusters.length);
    expect(build.thrusters.every(({ drive }) => drive === build.drives[0]!.name)).toBe(true);
  });

  test("the four in the corners push ahead together and their sideways parts cancel", () => {
    const level = start().thrusters.slice(0, 4);
    const sum = (axis: "x" | "y" | "z") => level.reduce((all, { direction }) => all + direction[axis], 0);
    expect([sum("x"), sum("y"), sum("z")].map((one) => Number(one.toFixed(12)))).toEqual(
      [2 * Math.SQRT2, 0, 0].map((one) => Number(one.toFixed(12))),
    );
  });

  test("drag and added mass of the box can be used in every direction", () => {
    const drag = axisDrag(start().drag, { kind: "fresh", temperature: 291.15 });
    // C_D 1.0 on 0.35 m by 0.25 m, the frontal area of the box; the coefficient is common practice, no source.
    expect(drag.surge?.forward.dragArea.value).toBeCloseTo(0.35 * 0.25, 12);
    expect([drag.sway, drag.heave].every((one) => one !== null)).toBe(true);
  });

  test("a body that is wider than long still gives a spheroid", () => {
    const wide = startingBuild({
      ...{ name: "W", layout: "ring", mass: 5, motorId: "m", packId: "p", propeller: "x" },
      size: { length: 0.2, width: 0.5, height: 0.4 },
    });
    expect(() => axisDrag(wide.drag, { kind: "fresh", temperature: 291.15 })).not.toThrow();
  });
});

describe("thrusters", () => {
  test.each([
    { heading: 0, dip: 0, is: [1, 0, 0] },
    { heading: 90, dip: 0, is: [0, 1, 0] },
    { heading: 180, dip: 0, is: [-1, 0, 0] },
    { heading: 0, dip: 90, is: [0, 0, 1] },
    { heading: -45, dip: 0, is: [Math.SQRT1_2, -Math.SQRT1_2, 0] },
  ])("heading $heading° and dip $dip° push along $is, and come back as they were", ({ heading, dip, is }) => {
    const { x, y, z } = directionOf({ heading: heading * DEGREE, dip: dip * DEGREE });
    for (const [i, part] of [x, y, z].entries()) expect(part).toBeCloseTo(is[i]!, 12);
    const back = anglesOf({ x, y, z });
    expect(back.heading / DEGREE).toBeCloseTo(heading, 10);
    expect(back.dip / DEGREE).toBeCloseTo(dip, 10);
  });

  test("a direction is told in words, the greatest part first", () => {
    expect(pushInWords({ x: 1, y: -0.5, z: 0 })).toBe("ahead and to port");
    expect(pushInWords({ x: 0, y: 0, z: -2 })).toBe("up");
  });

  test("a mirror image sits on the other side, pushes the other way across and turns against it", () => {
    const build = withThrusterMirrored(start("pairUprightAcross"), 0);
    expect(build.thrusters[1]).toMatchObject({ name: "Port 2", spin: "anticlockwise" });
    expect(build.thrusters[1]!.position.y).toBeCloseTo(-build.thrusters[0]!.position.y, 15);
  });

  test("one more is added under a free name, one is changed, and the last one stays", () => {
    const more = withThrusterAdded(withThrusterAdded(start()));
    expect(more.thrusters.slice(-2).map(({ name }) => name)).toEqual(["Thruster", "Thruster 2"]);
    expect(withThruster(more, 0, { name: "Bow" }).thrusters[0]!.name).toBe("Bow");
    const one = { ...start(), thrusters: start().thrusters.slice(0, 1) };
    expect(withoutThruster(one, 0).thrusters).toHaveLength(1);
  });

  test.each([
    { text: "120", si: 0.12 },
    { text: "12 cm", si: 0.12 },
    { text: "-40,5", si: -0.0405 },
    { text: "2 in", si: 0.0508 },
  ])("a cell in mm takes $text", ({ text, si }) => {
    const read = readCell(text, { dimension: "length", unit: "mm" });
    expect(read.kind === "value" ? read.si : null).toBeCloseTo(si, 12);
  });

  test("a cell says what it can not read, and shows a plain number", () => {
    expect(readCell("5 kg", { dimension: "length", unit: "mm" }).kind).toBe("problem");
    expect(cellText(-0.0405, { dimension: "length", unit: "mm" })).toBe("-40.5");
    expect(cellText(0.5, { dimension: "number", unit: "1" })).toBe("0.5");
  });
});

describe("drives", () => {
  test("thrusters follow a drive to its new name", () => {
    const renamed = withDrive(LARGER, 0, (drive) => ({ ...drive, name: "Big" }));
    expect(renamed.thrusters.map(({ drive }) => drive)).toEqual([
      ...Array(4).fill("Big"),
      ...Array(2).fill("Net thruster"),
    ]);
  });

  test("one that is in use stays, one that is not goes", () => {
    expect(withoutDrive(LARGER, 0).drives).toHaveLength(2);
    const more = withDriveAdded(LARGER);
    expect(usersOf(more, 2)).toEqual([]);
    expect(withoutDrive(more, 2).drives).toHaveLength(2);
  });
});

describe("drag", () => {
  const typed = { drag: { from: "typed", dragArea: 0.1, standardUncertainty: 0 } } as const;

  test.each(["forward", "sideways", "down"] as const)("%s is given and taken away again", (way) => {
    const given = withDrag({}, way, typed);
    expect(givenDrag(given, way)).toEqual(typed);
    expect(withoutDrag(given, way)).toEqual({});
  });

  test("astern is as ahead until it has a drag of its own", () => {
    const drag = withDrag(DABCHICK.drag, "astern", typed);
    const water = { kind: "fresh", temperature: 291.15 } as const;
    expect(resolvedDrag(axisDrag(drag, water), "astern")?.dragArea.value).toBe(0.1);
    expect(withoutDrag(drag, "astern")).toEqual(DABCHICK.drag);
    const up = withDrag(DABCHICK.drag, "up", typed);
    expect(resolvedDrag(axisDrag(up, water), "up")?.dragArea.value).toBe(0.1);
  });

  test("added mass goes to an axis that has a drag, and away again", () => {
    const mass = { from: "typed", mass: 3, standardUncertainty: 0 } as const;
    const drag = withAddedMass(withDrag({}, "sideways", typed), "sway", mass);
    expect(drag.sway?.addedMass).toEqual(mass);
    expect(withAddedMass(drag, "sway", null).sway).not.toHaveProperty("addedMass");
    expect(withAddedMass({}, "surge", mass)).toEqual({});
  });

  test("the shares of the parts are told in percent and sum to the whole", () => {
    const rows = axisDrag(DABCHICK.drag, { kind: "fresh", temperature: 291.15 }).surge!.forward.rows.map(shapeRowText);
    expect(rows.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    // Foam block: a plate of 300 mm by 60 mm, side ratio 1/5, C_D 1.2 (White, Fluid Mechanics, table 7.3; from memory).
    expect(rows[0]).toMatchObject({ name: "Foam block", area: "180 cm²", coefficient: "1.20" });
    expect(rows[2]!.name).toBe("6 × Bars of the frame");
  });

  test.each(Object.keys(SHAPE_KINDS) as (keyof typeof SHAPE_KINDS)[])("a %s is typed into a document", (kind) => {
    const draft = withValue(withKind(draftOf(null), kind), "name", "Part");
    expect(shapeOf(draft)).toHaveProperty("missing");
    const filled = SHAPE_KINDS[kind].sizes.reduce((now, { key }) => withValue(now, key, 0.1), draft);
    const made = shapeOf(filled);
    expect("item" in made && ShapeItem.safeParse(made.item).success).toBe(true);
  });

  test("a shape that is changed keeps what its new kind has too", () => {
    const bar = ShapeItem.parse({ kind: "crossCylinder", name: "Bar", diameter: 0.02, length: 0.3, count: 4 });
    const made = shapeOf(withKind(draftOf(bar), "axialCylinder"));
    expect(made).toEqual({
      item: ShapeItem.parse({ kind: "axialCylinder", name: "Bar", diameter: 0.02, length: 0.3, count: 4 }),
    });
  });
});

describe("mission and requirement", () => {
  const build = withMission(start());

  test("legs are added, moved and taken away; without legs there is no mission", () => {
    const more = withLegAdded(build);
    expect(more.mission?.legs.at(-1)).toMatchObject({ name: "Leg", kind: { does: "swim" } });
    expect(
      withLegMoved(more, 1, -1)
        .mission?.legs.map(({ name }) => name)
        .slice(0, 2),
    ).toEqual(["Along the net", "Down"]);
    expect(withLegMoved(more, 0, -1)).toEqual(more);
    const none = [0, 0, 0, 0].reduce((now, at) => withoutLeg(now, at), build);
    expect(none).not.toHaveProperty("mission");
  });

  test("a leg that shall do something else keeps its time", () => {
    const swim = build.mission!.legs[1]!;
    expect(withDoes(swim, "hold").kind).toEqual({ does: "hold", duration: 600 });
    expect(legTime(withDoes(swim, "rest"))).toBe(600);
    expect(legTime(build.mission!.legs[0]!)).toBeCloseTo(10 / 0.2, 12);
  });

  test("a leg is changed where it stands", () => {
    const changed = withLeg(build, 2, (leg) => ({ ...leg, repeats: 3 }));
    expect(changed.mission?.legs.map(({ repeats }) => repeats)).toEqual([1, 1, 3, 1]);
    expect(VehicleBuild.safeParse(changed).success).toBe(true);
  });

  test("an emptied demand asks nothing: absent, or 0 where nothing said means none", () => {
    const asked = VehicleRequirement.parse({ speed: 1, againstCurrent: 0.5 });
    expect(withDemand(asked, "speed", null)).not.toHaveProperty("speed");
    expect(withDemand(asked, "againstCurrent", null).againstCurrent).toBe(0);
    expect(withDemand(asked, "lift", 0.5).lift).toBe(0.5);
  });
});
