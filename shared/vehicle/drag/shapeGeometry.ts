import type { ShapeItem } from "../../model/vehicle/dragShapes.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { SHAPE_COEFFICIENTS } from "./shapes.data.ts";

export type CataloguedShape = Exclude<ShapeItem, { kind: "streamlinedBody" | "stated" }>;

/** What the sizes of a shape come to. */
export interface ShapeGeometry {
  /** Entry of the catalogue. */ readonly entry: keyof typeof SHAPE_COEFFICIENTS;
  /** Frontal area of one, m². */ readonly area: number;
  /** Ratio that the table of the entry lies over. */ readonly ratio: number;
  /** How that ratio is called, and its value, for messages. */ readonly ratioInWords: string;
  /** Length of the Reynolds number, m. */ readonly reynoldsLength: number;
  /** Shape in words. */ readonly described: string;
}

const circle = (d: number) => (Math.PI * d * d) / 4;
const metre = (value: number) => `${formatNumber(value)} m`;
const lengthOverDiameter = (L: number, d: number) => `L/d ${formatNumber(L / d)}`;

/** Frontal area and table entry of a shape of the catalogue. */
export function shapeGeometry(item: CataloguedShape): ShapeGeometry {
  switch (item.kind) {
    case "sphere":
    case "hemisphere":
    case "disc":
    case "cone":
      return round(item.kind, item.diameter, ROUND_WORDS[item.kind]);
    case "cup":
      return item.opening === "upstream"
        ? round("cupUpstream", item.diameter, "cup open to the flow")
        : round("cupDownstream", item.diameter, "cup open behind");
    case "axialCylinder":
    case "roundedCylinder":
    case "ellipsoid":
      return alongFlow(item);
    case "crossCylinder":
      return crossCylinder(item);
    case "plate":
      return plate(item);
    case "cube":
    case "squareBar":
      return square(item);
  }
}

const ROUND_WORDS = {
  sphere: "sphere",
  hemisphere: "half-sphere, round side forward",
  disc: "disc square to the flow",
  cone: "cone of 60°, point forward",
} as const;

function round(entry: ShapeGeometry["entry"], d: number, words: string): ShapeGeometry {
  const described = `${words}, diameter ${metre(d)}`;
  return { entry, area: circle(d), ratio: 1, ratioInWords: "", reynoldsLength: d, described };
}

type AlongFlow = Extract<ShapeItem, { kind: "axialCylinder" | "roundedCylinder" | "ellipsoid" }>;

function alongFlow(item: AlongFlow): ShapeGeometry {
  const { diameter: d, length: L } = item;
  const [entry, words] =
    item.kind === "ellipsoid"
      ? item.boundaryLayer === "laminar"
        ? (["ellipsoidLaminar", "ellipsoid, laminar"] as const)
        : (["ellipsoidTurbulent", "ellipsoid, turbulent"] as const)
      : item.kind === "axialCylinder"
        ? (["axialCylinder", "cylinder along the flow, flat ends"] as const)
        : (["roundedCylinder", "cylinder along the flow, rounded nose"] as const);
  const ratioInWords = lengthOverDiameter(L, d);
  const described = `${words}, diameter ${metre(d)}, length ${metre(L)}`;
  return { entry, area: circle(d), ratio: L / d, ratioInWords, reynoldsLength: d, described };
}

function crossCylinder({ diameter: d, length: L, ends }: Extract<ShapeItem, { kind: "crossCylinder" }>): ShapeGeometry {
  return {
    entry: "crossCylinder",
    area: L * d,
    ratio: ends === "closed" ? 0 : d / L,
    ratioInWords: lengthOverDiameter(L, d),
    reynoldsLength: d,
    described: `cylinder across the flow${ends === "closed" ? " between walls" : ""}, diameter ${metre(d)}, length ${metre(L)}`,
  };
}

function plate({ width, height }: Extract<ShapeItem, { kind: "plate" }>): ShapeGeometry {
  const [short, long] = width < height ? [width, height] : [height, width];
  const described = `flat plate square to the flow, ${metre(width)} by ${metre(height)}`;
  return {
    ...{ entry: "plate" as const, area: width * height, ratio: short / long },
    ...{ ratioInWords: `b/h ${formatNumber(long / short)}`, reynoldsLength: short, described },
  };
}

/** On edge the diagonal meets the flow. */
function square(item: Extract<ShapeItem, { kind: "cube" | "squareBar" }>): ShapeGeometry {
  const onEdge = item.facing === "edge";
  const width = item.side * (onEdge ? Math.SQRT2 : 1);
  const [length, words] = item.kind === "cube" ? [item.side, "cube"] : [item.length, "square bar across the flow"];
  const entry = item.kind === "cube" ? (onEdge ? "cubeEdge" : "cubeFace") : onEdge ? "squareBarEdge" : "squareBarFace";
  const sizes = item.kind === "cube" ? `side ${metre(item.side)}` : `side ${metre(item.side)}, length ${metre(length)}`;
  const described = `${words}, ${onEdge ? "edge" : "face"} on, ${sizes}`;
  return { entry, area: width * length, ratio: 1, ratioInWords: "", reynoldsLength: width, described };
}
