import type { LimitInputs } from "../drive/limitNumbers.ts";
import type { ShortlistRequirement } from "../model/shortlist.ts";
import { type Places, placesOf } from "./combinations.ts";
import { putController, putGear, putMotor, putSupply } from "./fillInputs.ts";
import { type CurveInputs, type DoubtfulInput, type Doubts, emptyInputs, type Inputs, NO_DOUBT } from "./inputs.ts";
import { Judge } from "./judge.ts";
import type { PartRecords } from "./partRecords.ts";
import { NO_THRUST, NOT_KNOWN, type Running } from "./rateSolver.ts";

/** One combination after the other in the same object: its parts put together, held against the demands. */
export class Candidate {
  readonly inputs: Inputs;
  readonly judge: Judge;
  readonly places: Places = { motor: -1, controller: -1, supply: -1, gear: -1, propeller: -1 };
  number = -1;
  /** kg; NaN where a part does not state it. */ mass = 0;
  price = 0;
  /** s; Infinity without end, NaN where not asked or not known. */ endurance = Number.NaN;
  curves: readonly (CurveInputs | null)[] = [];
  rates: readonly number[] = [];
  private atRest: CurveInputs | null = null;
  private turnsBothWays = true;
  private readonly asternPlace: number;
  private readonly limits = { ...NO_LIMITS };
  private readonly isDoubtful: boolean;
  private readonly next: Places = { motor: 0, controller: 0, supply: 0, gear: 0, propeller: 0 };

  constructor(
    readonly records: PartRecords,
    readonly requirement: ShortlistRequirement,
  ) {
    this.inputs = emptyInputs(requirement, records.common.density);
    const { supplyCurrent = Infinity, windingTemperature = Infinity, tipSpeed = Infinity } = requirement;
    this.judge = new Judge(records.table, { supplyCurrent, windingTemperature, tipSpeed });
    const { motors, controllers, supplies, gears, propellers, commonDoubts } = records;
    const parts = [...motors, ...controllers, ...supplies, ...gears, ...propellers];
    this.isDoubtful = [commonDoubts, ...parts.map(({ doubts }) => doubts)].some(({ inputs }) => inputs.length > 0);
    this.asternPlace = records.table.duties.findIndex(({ duty }) => duty === "astern");
  }

  /** Puts the combination of that number together and judges it. */
  take(number: number): void {
    this.put(number);
    this.judgeAll();
  }

  /** Puts it together without judging it: for one that is known to meet. Its endurance is not worked out. */
  put(number: number): void {
    const { next, places, records, inputs } = this;
    placesOf(number, records.sizes, next);
    this.number = number;
    if (next.motor !== places.motor) putMotor(inputs, records.motors[next.motor]!.inputs);
    if (next.controller !== places.controller) putController(inputs, records.controllers[next.controller]!.inputs);
    if (next.supply !== places.supply) putSupply(inputs, records.supplies[next.supply]!.inputs);
    if (next.gear !== places.gear) putGear(inputs, records.gears[next.gear]!.inputs);
    const propeller = records.propellers[next.propeller]!;
    inputs.diameter = propeller.diameter;
    this.curves = propeller.curves;
    this.rates = propeller.rates;
    this.atRest = propeller.atRest;
    this.turnsBothWays = records.controllers[next.controller]!.turnsBothWays;
    places.motor = next.motor;
    places.controller = next.controller;
    places.supply = next.supply;
    places.gear = next.gear;
    places.propeller = next.propeller;
    this.count();
  }

  /** Judges the combination with the inputs as they stand; `rates` must belong to them. */
  judgeAll(): void {
    const { judge, inputs, curves, rates } = this;
    for (let d = 0; d < curves.length; d++) {
      const oneWay = d === this.asternPlace && !this.turnsBothWays;
      judge.judgeDuty(d, inputs, curves[d]!, oneWay ? NO_THRUST : rates[d]!);
    }
    this.judgeParts();
  }

  /** Judges it again after inputs were changed: the rates follow from them. */
  judgeAgain(): void {
    const { judge, inputs } = this;
    this.rates = this.curves.map((curve, d) => {
      if (curve === null) return NOT_KNOWN;
      judge.solver.fill(inputs, curve, curve.advance);
      return judge.solver.rateForThrust(judge.table.duties[d]!.thrust);
    });
    this.judgeAll();
  }

  /**
   * Greatest rate of duty `d`, rev/s, at which every limit of it is kept; NaN where none is. The solver stays filled with
   * that duty.
   */
  greatestRate(d: number): number {
    const { inputs, judge } = this;
    const curve = this.curves[d]!;
    if (curve === null || (d === this.asternPlace && !this.turnsBothWays)) return Number.NaN;
    judge.solver.fill(inputs, curve, curve.advance);
    return judge.solver.greatestRate(this.limitsWith(curve));
  }

  /** Limits of the parts, drawn together with those of the requirement. */
  private limitsWith({ cavitation, ventilation }: CurveInputs): LimitInputs {
    const { inputs, requirement, limits } = this;
    const { supplyCurrent = Infinity, windingTemperature = Infinity, tipSpeed = Infinity } = requirement;
    limits.motorCurrent = inputs.motorCurrent;
    limits.motorPower = inputs.motorPower;
    limits.controllerCurrent = inputs.controllerCurrent;
    limits.fuseCurrent = inputs.fuseCurrent;
    limits.tetherCurrent = inputs.tetherCurrent;
    limits.leastVoltage = inputs.leastVoltage;
    limits.supplyCurrent = Math.min(inputs.supplyCurrent, supplyCurrent);
    limits.windingTemperature = Math.min(inputs.windingTemperature, windingTemperature);
    limits.cavitation = Math.min(cavitation, tipSpeed / (Math.PI * inputs.diameter));
    limits.ventilation = ventilation;
    return limits;
  }

  /** What is doubtful of its parts. */
  doubts(): Doubts {
    const { records, places } = this;
    if (!this.isDoubtful) return NO_DOUBT;
    const parts = [
      records.motors[places.motor]!,
      records.controllers[places.controller]!,
      records.supplies[places.supply]!,
      records.gears[places.gear]!,
      records.propellers[places.propeller]!,
    ];
    const all = [records.commonDoubts, ...parts.map(({ doubts }) => doubts)];
    return {
      inputs: all.flatMap(({ inputs }) => inputs),
      correlations: all.flatMap(({ correlations }) => correlations),
    };
  }

  /** Curves of its own, so that coefficients can be changed. */
  ownCurves(): void {
    this.curves = this.curves.map((curve) => curve && { ...curve });
    this.atRest = { ...this.atRest! };
  }

  /** Value of an input that may be doubtful; NaN for one that has no part in this. */
  valueOf(input: DoubtfulInput): number {
    switch (input) {
      case "thrustAhead":
        return this.atRest!.thrustCoefficient;
      case "torqueAhead":
        return this.atRest!.torqueCoefficient;
      case "thrustAstern":
        return this.curveAstern()?.thrustCoefficient ?? Number.NaN;
      case "torqueAstern":
        return this.curveAstern()?.torqueCoefficient ?? Number.NaN;
      default:
        return this.inputs[input];
    }
  }

  /** Sets such an input; the curves must be the candidate's own. */
  setValue(input: DoubtfulInput, value: number): void {
    switch (input) {
      case "thrustAhead":
      case "torqueAhead":
        for (const curve of this.curvesAhead()) curve[COEFFICIENT[input]] = value;
        return;
      case "thrustAstern":
      case "torqueAstern": {
        const curve = this.curveAstern();
        if (curve) curve[COEFFICIENT[input]] = value;
        return;
      }
      default:
        this.inputs[input] = value;
    }
  }

  private curvesAhead(): CurveInputs[] {
    const { duties } = this.judge.table;
    const ahead = this.curves.filter((curve, d) => curve !== null && duties[d]!.duty !== "astern");
    return [...(ahead as CurveInputs[]), this.atRest!];
  }

  private curveAstern(): CurveInputs | null {
    return this.curves[this.asternPlace] ?? null;
  }

  /** Adds up mass and price of what is counted. */
  private count(): void {
    const { records, places, requirement } = this;
    const motor = records.motors[places.motor]!;
    const controller = records.controllers[places.controller]!;
    const gear = records.gears[places.gear]!;
    const propeller = records.propellers[places.propeller]!;
    const supply = records.supplies[places.supply]!;
    const all = requirement.counted === "all";
    const times = all ? requirement.thrusters : 1;
    this.mass = times * (motor.mass + controller.mass + gear.mass + propeller.mass) + (all ? supply.mass : 0);
    this.price = times * (motor.price + controller.price + gear.price + propeller.price) + (all ? supply.price : 0);
  }

  private judgeParts(): void {
    const { judge, inputs, requirement, mass, price } = this;
    const { diameter = Infinity, mass: massLimit = Infinity, price: priceLimit = Infinity } = requirement;
    const { least = 0, greatest = Infinity } = requirement.supplyVoltage ?? {};
    judge.holdPart("diameter", "at most", diameter, inputs.diameter);
    if (inputs.supplyVoltage < least) judge.holdPart("voltage range", "at least", least, inputs.supplyVoltage);
    else judge.holdPart("voltage range", "at most", greatest, inputs.supplyVoltage);
    judge.holdPart("motor voltage rating", "at most", inputs.motorVoltage, inputs.supplyVoltage);
    judge.holdPart("controller voltage rating", "at most", inputs.controllerVoltage, inputs.supplyVoltage);
    const [massKnown, priceKnown] = [!Number.isNaN(mass), !Number.isNaN(price)];
    judge.holdPart("mass", "at most", massKnown ? massLimit : Infinity, mass);
    judge.holdPart("price", "at most", priceKnown ? priceLimit : Infinity, price);
    const timeKnown = this.judgeEndurance();
    const known = (massKnown || massLimit === Infinity) && (priceKnown || priceLimit === Infinity) && timeKnown;
    judge.partsKnown(known);
  }

  /** Returns whether the time is known, where it is asked. */
  private judgeEndurance(): boolean {
    const { judge, inputs, requirement } = this;
    const { endurance } = requirement;
    judge.holdPart("endurance", "at least", 0, 0);
    if (endurance === undefined) return true;
    this.endurance = this.timeAtMeanThrust();
    if (Number.isNaN(inputs.charge)) return false;
    if (this.endurance !== Infinity) judge.holdPart("endurance", "at least", endurance.duration, this.endurance);
    return true;
  }

  /** t = Q (s - r)/I_s at the voltage as it is stated; 0 where the supply does not give the mean thrust. */
  private timeAtMeanThrust(): number {
    const running = this.runAtMeanThrust();
    const isGiven = running.held && running.neededVoltage <= this.inputs.supplyVoltage;
    return isGiven ? this.inputs.charge / running.supplyCurrent : 0;
  }

  /** Runs ahead at rest with the mean thrust. */
  runAtMeanThrust(): Running {
    const { solver } = this.judge;
    solver.fill(this.inputs, this.atRest!, null);
    return solver.runAt(solver.rateForThrust(this.requirement.endurance!.meanThrust));
  }
}

const NO_LIMITS = {
  ...{ motorCurrent: Infinity, motorPower: Infinity, windingTemperature: Infinity, controllerCurrent: Infinity },
  ...{ supplyCurrent: Infinity, fuseCurrent: Infinity, tetherCurrent: Infinity, leastVoltage: 0 },
  ...{ cavitation: Infinity, ventilation: Infinity },
};

const COEFFICIENT = {
  thrustAhead: "thrustCoefficient",
  torqueAhead: "torqueCoefficient",
  thrustAstern: "thrustCoefficient",
  torqueAstern: "torqueCoefficient",
} as const;
