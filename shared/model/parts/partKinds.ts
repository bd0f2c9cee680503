import { z } from "zod";
import { Instrument } from "../instrument.ts";
import { Controller } from "./controller.ts";
import { Gear } from "./gear.ts";
import { Motor } from "./motor.ts";
import { Pack } from "./pack.ts";
import { Propeller } from "./propeller.ts";
import { TetherCable } from "./tetherCable.ts";

/** The kinds of part a builder keeps; the key is the name in addresses. */
export const PART_SCHEMAS = {
  propellers: Propeller,
  motors: Motor,
  controllers: Controller,
  packs: Pack,
  tethers: TetherCable,
  gears: Gear,
  instruments: Instrument,
} as const;
export type PartKind = keyof typeof PART_SCHEMAS;
export const PartKind = z.enum(["propellers", "motors", "controllers", "packs", "tethers", "gears", "instruments"]);
export type PartOf = { [K in PartKind]: z.infer<(typeof PART_SCHEMAS)[K]> };

/** A document as a part of that kind; ZodError where it is none. */
export const parsedPart = <K extends PartKind>(kind: K, document: unknown): PartOf[K] =>
  PART_SCHEMAS[kind].parse(document) as PartOf[K];
