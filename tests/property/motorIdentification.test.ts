import fc from "fast-check";
import { expect, test } from "vitest";
import { type MotorIdentificationInput, MotorIdentificationRequest } from "../../shared/model/motorIdentification.ts";
import { identifyMotor } from "../../shared/motor/identifyMotor.ts";
import { independentCauses } from "../../shared/motor/motorCovariance.ts";

const identify = (input: MotorIdentificationInput) => identifyMotor(MotorIdentificationRequest.parse(input));

interface TrueMotor {
  readonly speedConstant: number;
  readonly resistance: number;
  readonly noLoadCurrent: number;
  readonly slope: number;
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const MOTORS: fc.Arbitrary<TrueMotor> = fc.record({
  speedConstant: number(15, 200),
  resistance: number(0.02, 0.6),
  noLoadCurrent: number(0.2, 2),
  slope: number(1e-4, 3e-3),
});

/** Points of a motor without noise; `volts` and `amperes` change the units that its meters count in. */
function pointsOf({ speedConstant, resistance, noLoadCurrent, slope }: TrueMotor, volts = 1, amperes = 1) {
  const point = (load: "noLoadDry" | "loaded", part: number, more: number) => {
    const omega = part * 10 * speedConstant;
    const current = noLoadCurrent + slope * omega + more;
    const voltage = omega / speedConstant + resistance * current;
    return {
      ...{ load, voltage: volts * voltage, current: amperes * current, rotationRate: omega / (2 * Math.PI) },
      ...{
        voltageUncertainty: 0.01 * volts,
        currentUncertainty: 0.01 * amperes,
        rotationRateUncertainty: 1e-4 * omega,
      },
    };
  };
  return [
    ...[0.2, 0.5, 1].map((part) => point("noLoadDry", part, 0)),
    ...[0.4, 0.6, 0.8].map((part) => point("loaded", part, 5 + 15 * part)),
  ];
}

test("points without noise give back the motor that they were made with", () => {
  fc.assert(
    fc.property(MOTORS, (motor) => {
      const { constants, converged } = identify({ points: pointsOf(motor) });
      expect(converged).toBe(true);
      expect(constants!.speedConstant.value / motor.speedConstant).toBeCloseTo(1, 6);
      expect(constants!.resistance.value / motor.resistance).toBeCloseTo(1, 5);
      expect(constants!.noLoadCurrent!.value / motor.noLoadCurrent).toBeCloseTo(1, 5);
      expect(constants!.noLoadCurrentSlope!.value / motor.slope).toBeCloseTo(1, 5);
    }),
    { numRuns: 60 },
  );
});

test("volts and amperes in other units change the constants and their doubt by these units alone", () => {
  fc.assert(
    fc.property(MOTORS, number(0.5, 2), number(0.5, 2), (motor, volts, amperes) => {
      const [plain, scaled] = [pointsOf(motor), pointsOf(motor, volts, amperes)].map(
        (points) => identify({ points }).constants!,
      );
      const ratios = [
        [scaled!.speedConstant, plain!.speedConstant, 1 / volts],
        [scaled!.resistance, plain!.resistance, volts / amperes],
        [scaled!.noLoadCurrent!, plain!.noLoadCurrent!, amperes],
      ] as const;
      for (const [after, before, factor] of ratios) {
        expect(after.value / (factor * before.value)).toBeCloseTo(1, 5);
        expect(after.standardUncertainty / (factor * before.standardUncertainty)).toBeCloseTo(1, 4);
      }
    }),
    { numRuns: 40 },
  );
});

test("readings that are twice as doubtful make every constant twice as doubtful", () => {
  fc.assert(
    fc.property(MOTORS, (motor) => {
      const points = pointsOf(motor);
      const doubtful = points.map((one) => ({
        ...one,
        ...{ voltageUncertainty: 0.02, currentUncertainty: 0.02 },
        rotationRateUncertainty: 2 * one.rotationRateUncertainty,
      }));
      const [once, twice] = [identify({ points }), identify({ points: doubtful })].map(({ constants }) => constants!);
      for (const name of ["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"] as const)
        expect(twice![name]!.standardUncertainty / once![name]!.standardUncertainty).toBeCloseTo(2, 3);
    }),
    { numRuns: 40 },
  );
});

test("independent causes make up any covariance that can be", () => {
  const roots = fc.array(fc.array(number(-2, 2), { minLength: 4, maxLength: 4 }), { minLength: 4, maxLength: 4 });
  fc.assert(
    fc.property(roots, (A) => {
      const product = (M: readonly (readonly number[])[]) =>
        M.map((row) => M.map((other) => row.reduce((sum, one, k) => sum + one * other[k]!, 0)));
      const covariance = product(A);
      const back = product(independentCauses(covariance));
      const size = 1 + Math.max(...covariance.flat().map(Math.abs));
      back.flat().forEach((value, i) => {
        expect(Math.abs(value - covariance.flat()[i]!)).toBeLessThan(1e-5 * size);
      });
    }),
  );
});
