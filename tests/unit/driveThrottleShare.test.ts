import { expect, test } from "vitest";
import { throttleShare } from "../../shared/drive/throttleShare.ts";

test.each([0, 0.35, 1])("%s is a throttle", (throttle) => expect(throttleShare(throttle)).toBe(throttle));

test.each([
  { throttle: 1.5, says: "Write 0.0150 if it is per cent, or 0.500 if it is a pulse of 1 to 2 ms" },
  { throttle: 75, says: "Write 0.750 if it is per cent" },
  { throttle: 1600, says: "Write 0.600 if it is a pulse of 1000 to 2000 µs" },
  { throttle: -0.5, says: "Running astern has throttle 0 to 1 too: write 0.500" },
  { throttle: 4095, says: "Write 1 for full throttle" },
  { throttle: Number.NaN, says: "Write for example 0.6 for 60 %" },
])("$throttle is refused with what it may mean: $says", ({ throttle, says }) => {
  expect(() => throttleShare(throttle)).toThrow(says);
});
