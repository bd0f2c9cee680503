import { ShapeItem, type ShapeKind } from "../../../../../shared/model/vehicle/dragShapes.ts";
import type { Dimension } from "../../../../../shared/quantity/units.data.ts";

/** One size of a shape, as it is asked. */
export interface ShapeSize {
  readonly key: string;
  readonly label: string;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly optional?: boolean;
  readonly help?: string;
}

export interface ShapeChoice {
  readonly key: string;
  readonly label: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export interface ShapeWords {
  readonly label: string;
  readonly sizes: readonly ShapeSize[];
  readonly choices?: readonly ShapeChoice[];
}

const size = (key: string, label: string): ShapeSize => ({ key, label, dimension: "length", unit: "mm" });
const DIAMETER = size("diameter", "Diameter across the flow");
const ALONG = size("length", "Length along the flow");
const ACROSS = size("length", "Length across the flow");
const choice = (key: string, label: string, ...options: readonly (readonly [string, string])[]): ShapeChoice => ({
  key,
  label,
  options: options.map(([value, text]) => ({ value, label: text })),
});
const FACING = choice("facing", "What meets the flow", ["face", "a face"], ["edge", "an edge"]);

/** What the catalogue of shapes asks of each kind. */
export const SHAPE_KINDS: Readonly<Record<ShapeKind, ShapeWords>> = {
  axialCylinder: { label: "Cylinder along the flow, flat ends", sizes: [DIAMETER, ALONG] },
  roundedCylinder: { label: "Cylinder along the flow, rounded nose", sizes: [DIAMETER, ALONG] },
  crossCylinder: {
    label: "Cylinder or tube across the flow",
    sizes: [DIAMETER, ACROSS],
    choices: [choice("ends", "Its ends", ["free", "are free"], ["closed", "both meet walls"])],
  },
  plate: {
    label: "Flat plate square to the flow",
    sizes: [size("width", "Width"), size("height", "Height")],
  },
  squareBar: { label: "Long square bar across the flow", sizes: [size("side", "Side"), ACROSS], choices: [FACING] },
  cube: { label: "Cube", sizes: [size("side", "Side")], choices: [FACING] },
  sphere: { label: "Sphere", sizes: [DIAMETER] },
  hemisphere: { label: "Half-sphere, round side forward", sizes: [DIAMETER] },
  cup: {
    label: "Hollow half-sphere",
    sizes: [DIAMETER],
    choices: [choice("opening", "It opens", ["upstream", "forward, into the flow"], ["downstream", "backward"])],
  },
  disc: { label: "Disc square to the flow", sizes: [DIAMETER] },
  cone: { label: "Cone of 60°, point forward", sizes: [DIAMETER] },
  ellipsoid: {
    label: "Ellipsoid, long axis along the flow",
    sizes: [DIAMETER, ALONG],
    choices: [choice("boundaryLayer", "Its boundary layer is", ["turbulent", "turbulent"], ["laminar", "laminar"])],
  },
  streamlinedBody: {
    label: "Streamlined body with a fine tail",
    sizes: [
      DIAMETER,
      ALONG,
      {
        ...{ key: "wettedArea", label: "Wetted area", dimension: "area", unit: "cm²", optional: true },
        help: "Left empty, ¾ of length times circumference.",
      },
    ],
  },
  stated: {
    label: "Another shape: area and coefficient stated",
    sizes: [
      { key: "area", label: "Area of the coefficient", dimension: "area", unit: "cm²" },
      { key: "dragCoefficient", label: "Drag coefficient", dimension: "number", unit: "1" },
      { key: "relativeUncertainty", label: "give or take", dimension: "fraction", unit: "%" },
    ],
  },
};

/** A shape to begin a list with; its name says that it stands for one that is to be typed. */
export const FIRST_SHAPE: ShapeItem = ShapeItem.parse({
  ...{ kind: "axialCylinder", name: "Example, to be replaced: main housing", diameter: 0.11, length: 0.3 },
});
