import type { MotionWay, SteadyMotion } from "../../model/vehicle/motionAnswer.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { SteadySpeed } from "./steadySpeed.ts";
import type { WayProblem } from "./wayForces.ts";

export const GOING: Readonly<Record<MotionWay, string>> = {
  ...{ ahead: "ahead", astern: "astern", starboard: "to starboard", port: "to port", up: "up", down: "down" },
};

const AGAINST_MOTION = "vehicle.push-against-motion";
const REST_AT_SPEED = "vehicle.rest-coefficients-at-speed";

/** Whether the speed is an upper bound, which its ± does not tell. */
export const isAtMost = (warnings: readonly Pick<Warning, "code">[]) =>
  warnings.some(({ code }) => code === REST_AT_SPEED);

/** A number as words, told as the most where its speed is an upper bound. */
export const atMostWords = (told: string, isMost: boolean) => (isMost ? `at most about ${told}` : told);

/** What the coefficients of the working thrusters leave unsaid at a speed that is reached one way. */
export function wayWarnings({ model, way }: WayProblem, { atSpeed, speed }: Pick<SteadySpeed, "atSpeed" | "speed">) {
  if (!(speed > 0)) return [];
  const { flow, thrusts } = atSpeed.solved;
  const working = flow.thrusters.flatMap((one, i) => {
    const force = thrusts[i]!;
    if (Math.abs(force) < 1e-6 * Math.max(...thrusts.map(Math.abs))) return [];
    const inflow = force < 0 ? -one.inflow : one.inflow;
    const { drive, name } = model.thrusters[i]!;
    const wayModel = model.drives[drive]![force < 0 ? "astern" : "ahead"];
    return [{ name, inflow, atRestOnly: wayModel?.moving === null }];
  });
  const slow = 1e-6 * speed;
  const against = working.filter(({ inflow }) => inflow < -slow);
  const unknown = working.filter(({ inflow, atRestOnly }) => inflow > slow && atRestOnly);
  const names = (some: readonly { name: string }[]) => some.map(({ name }) => name).join(", ");
  return [
    ...(against.length === 0 ? [] : [noted(AGAINST_MOTION, [way], names(against))]),
    ...(unknown.length === 0 ? [] : [noted(REST_AT_SPEED, [way], names(unknown))]),
  ];
}

type Code = typeof AGAINST_MOTION | typeof REST_AT_SPEED;

/** What is said of the thrusters `who`, going some ways. */
const SAYS: Readonly<Record<Code, (ways: string, who: string) => Omit<Parameters<typeof warning>[0], "where">>> = {
  [AGAINST_MOTION]: (ways, who) => ({
    code: AGAINST_MOTION,
    found: `Going ${ways}, ${who} push against the water that comes in; their coefficients at rest are taken`,
    needed: "coefficients of a propeller that pushes against the flow",
    mend: "Take this speed as rough",
  }),
  [REST_AT_SPEED]: (ways, who) => ({
    code: REST_AT_SPEED,
    found: `Going ${ways}, the coefficients of ${who} are known at rest only, so the thrust does not fall with the speed as it would`,
    needed: "how K_T and K_Q change with the advance ratio",
    mend: "Measure at speed, or take the shape of a series; the real speed is lower",
  }),
};

const noted = (code: Code, ways: readonly MotionWay[], who: string): Warning =>
  warning({
    ...SAYS[code](ways.map((way) => GOING[way]).join(", "), who),
    where: ways.length === 1 ? ways[0]! : "speeds",
  });

/** The warnings of all ways: what is said of several of them is said once. */
export function mergedWayWarnings(motions: readonly Pick<SteadyMotion, "way" | "warnings">[]): Warning[] {
  return ([AGAINST_MOTION, REST_AT_SPEED] as const).flatMap((code) => {
    const some = motions.flatMap(({ way, warnings }) =>
      warnings.filter((one) => one.code === code).map((one) => ({ way, one })),
    );
    if (some.length < 2) return some.map(({ one }) => one);
    return [
      noted(
        code,
        some.map(({ way }) => way),
        "the thrusters at work",
      ),
    ];
  });
}
