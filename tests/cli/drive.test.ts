import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const THRUSTER = [
  ...["--kv", "900rpm/V", "--resistance", "120mohm", "--no-load-current", "0.6A"],
  ...["--supply", "14.8V", "--supply-resistance", "40mohm", "--diameter", "76mm"],
  ...["--thrust-coefficient", "0.2", "--torque-coefficient", "0.02", "--water", "fresh 18C"],
];

/**
 * The same thruster solved outside the project: Python 3.11, scipy 1.17.1, `scipy.optimize.fsolve` on the three unknowns
 * (n, I, U) of U = U_oc - R_s delta I, K_v (delta U - I R) = 2 pi n, K_Q rho n² D⁵ = (I - I_0)/K_v with xtol 1e-14,
 * rho = 998.5980363 kg/m³ (IAPWS SR6-08 at 18 °C, from the iapws library 1.5.2).
 */
const SOLVED = {
  "100%": {
    rotationRate: 101.81670381524869,
    thrust: 69.07376661852403,
    torque: 0.5249606263007827,
    motorCurrent: 50.07637341031306,
    supplyCurrent: 50.07637341031306,
    supplyVoltage: 12.79694506358748,
    shaftPower: 335.83475049136604,
    electricalPower: 640.824599515469,
  },
  "60%": {
    rotationRate: 76.16868184241524,
    thrust: 38.65698263306803,
    torque: 0.293793068011317,
    motorCurrent: 28.289344324198787,
    supplyCurrent: 16.97360659451927,
    supplyVoltage: 14.12105573621923,
    shaftPower: 140.60405721699894,
    electricalPower: 239.6852447658649,
  },
};

test.each(Object.entries(SOLVED))(
  "drive at %s throttle gives what an independent solver gives",
  async (throttle, solved) => {
    const { code, stdout } = await runCli("drive", ...THRUSTER, "--throttle", throttle, "--json");
    expect(code).toBe(0);
    const point = JSON.parse(stdout);
    for (const [name, value] of Object.entries(solved)) {
      expect(Math.abs(point[name] / value - 1), name).toBeLessThan(1e-8);
    }
    expect(point.efficiency).toBeCloseTo(point.shaftPower / point.electricalPower, 12);
  },
);

test("drive without --json prints every quantity with its unit", async () => {
  const { code, stdout } = await runCli("drive", ...THRUSTER);
  expect(code).toBe(0);
  expect(stdout).toMatch(/Rotation rate of the propeller\s+[\d.]+ rpm/);
  expect(stdout).toMatch(/Thrust\s+[\d.]+ N/);
  expect(stdout).not.toMatch(/NaN|undefined|null/);
});

test("a stated uncertainty comes out as an interval", async () => {
  const words = THRUSTER.map((word) => (word === "0.2" ? "0.2 ± 0.004" : word));
  const { thrust, uncertainties } = JSON.parse((await runCli("drive", ...words, "--json")).stdout);
  // T is proportional to K_T while n hangs on K_Q alone: 2 % of K_T is 2 % of T.
  expect(uncertainties.thrust.standardUncertainty / thrust).toBeCloseTo(0.02, 6);
});

test("exit code 1 says that the wanted thrust is not reached, 0 that it is", async () => {
  expect((await runCli("drive", ...THRUSTER, "--wanted-thrust", "10kgf")).code).toBe(1);
  expect((await runCli("drive", ...THRUSTER, "--wanted-thrust", "1N")).code).toBe(0);
});

test.each([
  { words: ["drive"], says: /--kv: this option is missing/ },
  { words: ["drive", ...THRUSTER, "--throttle", "140%"], says: /throttle/ },
  { words: ["drive", ...THRUSTER.map((word) => (word === "76mm" ? "76" : word))], says: /"76" has no unit/ },
  {
    words: ["drive", ...THRUSTER.map((word) => (word === "76mm" ? "76 V" : word))],
    says: /"V" is a unit of a voltage/,
  },
  { words: ["drive", ...THRUSTER, "--watre", "x"], says: /--watre/ },
  {
    words: ["drive", ...THRUSTER, "--tether-length", "20m"],
    says: /copper of the tether is not given.*--tether-gauge/,
  },
  { words: ["drive", ...THRUSTER, "--astern", "--astern-share", "0%"], says: /thrust coefficient K_T is 0/ },
  { words: ["fly"], says: /"fly" is not something this program does/ },
])("$words.0 with unusable words exits with 2 and says $says", async ({ words, says }) => {
  const { code, stdout, stderr } = await runCli(...words);
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toMatch(says);
  expect(stderr).not.toMatch(/\bat .*\.js:\d+/);
});
