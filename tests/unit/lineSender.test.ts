import { expect, test, vi } from "vitest";
import { LineOutbox } from "../../shared/log/lineOutbox.ts";
import { type Delivery, LineSender, type SendingState } from "../../shared/log/lineSender.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const text = (all: Uint8Array) => new TextDecoder().decode(all);

test("an outbox gives out what waits, from the first byte that is not acknowledged, in pieces of any size", () => {
  const outbox = new LineOutbox();
  expect(outbox.add(bytes("1,2\n"))).toMatchObject({ offset: 0 });
  expect(outbox.add(bytes("3,4\n"))).toMatchObject({ offset: 4 });
  const first = outbox.next(6)!;
  expect([first.offset, text(first.bytes)]).toEqual([0, "1,2\n3,"]);
  outbox.acknowledge(6);
  const second = outbox.next(100)!;
  expect([second.offset, text(second.bytes)]).toEqual([6, "4\n"]);
  outbox.acknowledge(8);
  expect(outbox.next(100)).toBeNull();
  expect(outbox.end).toBe(8);
});

test("an acknowledgement that comes late or twice lets nothing go that was not acknowledged", () => {
  const outbox = new LineOutbox(10);
  outbox.add(bytes("abcdef"));
  outbox.acknowledge(13);
  outbox.acknowledge(12);
  expect(text(outbox.next(100)!.bytes)).toBe("def");
});

/** A workbench that holds what it gets, and fails as `faults` say before each post. */
function holding(faults: (Delivery | "lost")[] = []) {
  let held = "";
  const post = vi.fn(async ({ offset, bytes: came }: { offset: number; bytes: Uint8Array }): Promise<Delivery> => {
    const fault = faults.shift();
    if (fault !== undefined && fault !== "lost") return fault;
    if (offset <= held.length) held = held.slice(0, offset) + text(came);
    // "lost": taken, but the answer never came.
    return fault === "lost" ? { state: "later", why: "No answer." } : { state: "held", bytes: held.length };
  });
  return { post, held: () => held };
}
const atOnce = async () => {};

test("everything arrives once and in order, though posts fail, answers are lost, and lines come meanwhile", async () => {
  const workbench = holding([{ state: "later", why: "Gone." }, "lost", { state: "later", why: "Gone." }, "lost"]);
  const told: SendingState[] = [];
  const sender = new LineSender({ post: workbench.post, pause: atOnce, onChange: (state) => told.push(state) });
  for (const line of ["a,b\n", "1,2\n", "3,4\n", "5,6\n"]) {
    sender.send(bytes(line));
    await atOnce();
  }
  expect(await sender.settled()).toEqual({ received: 16, held: 16, delayed: "", refused: "" });
  expect(workbench.held()).toBe("a,b\n1,2\n3,4\n5,6\n");
  expect(told.some(({ delayed }) => delayed === "Gone.")).toBe(true);
});

test("one post is under way at a time, and what comes meanwhile goes in the next", async () => {
  let release = () => {};
  let underWay = 0;
  const sizes: number[] = [];
  const sender = new LineSender({
    pause: atOnce,
    post: async ({ offset, bytes: came }) => {
      underWay += 1;
      expect(underWay).toBe(1);
      sizes.push(came.length);
      await new Promise<void>((resolve) => {
        release = resolve;
      });
      underWay -= 1;
      return { state: "held", bytes: offset + came.length };
    },
  });
  for (let i = 0; i < 5; i += 1) sender.send(bytes("1,2\n"));
  release();
  await vi.waitFor(() => expect(sizes).toHaveLength(2));
  release();
  await sender.settled();
  expect(sizes).toEqual([4, 16]);
});

test("waits grow while the workbench does not answer, and are short again when it does", async () => {
  const waits: number[] = [];
  const later = { state: "later", why: "Gone." } as const;
  const workbench = holding([later, later, later, later, later, later, later]);
  const pause = async (milliseconds: number) => void waits.push(milliseconds);
  const sender = new LineSender({ post: workbench.post, pause });
  sender.send(bytes("1\n"));
  await sender.settled();
  expect(waits).toEqual([250, 500, 1000, 2000, 4000, 8000, 8000, 80]);
});

test("a refusal ends the sending and says why; what was not taken is still counted as received", async () => {
  const sender = new LineSender({ ...holding([{ state: "refused", why: "It has ended." }]), pause: atOnce });
  sender.send(bytes("1,2\n"));
  expect(await sender.settled()).toEqual({ received: 4, held: 0, delayed: "", refused: "It has ended." });
  sender.send(bytes("3,4\n"));
  expect(await sender.settled()).toMatchObject({ received: 8, held: 0, refused: "It has ended." });
});

test("a sender that takes up a recording goes on behind what is held", async () => {
  const sender = new LineSender({
    start: 100,
    pause: atOnce,
    post: async ({ offset, bytes: came }) => ({ state: "held", bytes: offset + came.length }),
  });
  expect(sender.send(bytes("1\n")).offset).toBe(100);
  expect(await sender.settled()).toMatchObject({ received: 102, held: 102 });
});
