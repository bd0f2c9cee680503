import { expect, test } from "vitest";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { roleOfText } from "../../shared/log/roleUnits.ts";

/** Rows of a towed run under the given header: time, thrust, rotation rate in rpm, speed in m/s. */
function guesses(header: string) {
  const rows = Array.from({ length: 60 }, (_, i) => {
    const speed = Math.floor(i / 12) * 0.5;
    return [(i * 0.5).toFixed(1), (12 - 4 * speed).toFixed(2), i < 6 ? "0" : String(2500 + i), speed.toFixed(2)].join(
      ",",
    );
  });
  const text = [header, ...rows].join("\n");
  return guessRoles(readLog(new TextEncoder().encode(text), "tow.csv")).map(({ role, unit }) => `${role} ${unit}`);
}

test.each([
  {
    header: "time (s),thrust (N),rpm,speed (m/s)",
    speed: "advanceSpeed m/s",
    why: "the unit decides what speed is meant",
  },
  { header: "time (s),thrust (N),speed (rpm),flow (m/s)", speed: "advanceSpeed m/s", why: "a speed in rpm turns" },
  { header: "time (s),thrust (N),rpm,carriage (cm/s)", speed: "advanceSpeed cm/s", why: "a towing carriage" },
  { header: "time (s),thrust (N),rpm,log speed [kn]", speed: "advanceSpeed kn", why: "a boat's log in knots" },
  { header: "time (s),thrust (N),rpm,tow speed (km/h)", speed: "advanceSpeed km/h", why: "a tow behind a boat" },
  {
    header: "time (s),thrust (N),motor speed (rpm),water speed (m/s)",
    speed: "advanceSpeed m/s",
    why: "both are speeds",
  },
])("$header: the last column is $speed ($why)", ({ header, speed }) => {
  const [, , rate, last] = guesses(header);
  expect(last).toBe(speed);
  expect(rate).toBe("rotationRate rpm");
});

test.each([
  { header: "time (s),thrust (N),speed,note", role: "rotationRate" },
  { header: "time (s),thrust (N),motor speed (1/min),note", role: "rotationRate" },
])("$header: the third column stays the $role", ({ header, role }) => {
  expect(guesses(header)[2]).toContain(role);
});

test.each(["advance speed", "carriage", "m/s", "tow", "flow speed"])("%s names the advance speed", (text) => {
  expect(roleOfText(text)).toBe("advanceSpeed");
});
