import { z } from "zod";
import { si } from "../fields.ts";
import { uncertainSi } from "../uncertain.ts";
import { Axis } from "./layoutRequest.ts";

const amount = uncertainSi({ symbol: "", unit: "N or N·m", text: "Greatest force or moment, with its sign" });

/** One axis and way before and after a thruster is lost. */
export const AxisLoss = z
  .strictObject({
    axis: Axis,
    way: z.enum(["positive", "negative"]),
    word: z.string(),
    before: amount,
    after: amount,
    kept: z.number().min(0).nullable().describe("After over before; null where there was nothing before"),
  })
  .meta({ id: "AxisLoss" });
export type AxisLoss = z.infer<typeof AxisLoss>;

/** What is left when one thruster makes no thrust. */
export const ThrusterLoss = z
  .strictObject({
    thruster: z.int().min(0).describe("Place of the lost one in the order"),
    axes: z.array(AxisLoss),
    sentence: z.string(),
  })
  .meta({ id: "ThrusterLoss" });
export type ThrusterLoss = z.infer<typeof ThrusterLoss>;

const moments = z.array(si(z.number(), { symbol: "", unit: "N·m", text: "K, M, N" }));

/** Reaction of the propellers on the vehicle when it pushes ahead with all it has. */
export const SpinBalance = z
  .strictObject({
    residual: moments.describe("With the senses of rotation as they are"),
    best: moments.describe("With those that cancel best"),
    senses: z.array(z.enum(["clockwise", "anticlockwise"])).describe("Those senses, in the order of the thrusters"),
    changed: z.array(z.int().min(0)).describe("Thrusters whose sense differs from the one given"),
    sentence: z.string(),
  })
  .meta({ id: "SpinBalance" });
export type SpinBalance = z.infer<typeof SpinBalance>;
