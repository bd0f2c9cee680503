import { expect, test } from "vitest";
import { readPort, type SerialPort } from "../../web/views/bench/live/serialPort.ts";

type Act = Uint8Array | "fault" | "gone" | "end";

/** A port whose streams do these acts, one after the other; a stream per list. */
function portOf(...streams: readonly (readonly Act[])[]) {
  const waiting = [...streams];
  const port = {
    readable: null as ReadableStream<Uint8Array> | null,
    isOpen: false,
    opened: 0,
    async open() {
      port.isOpen = true;
      port.opened += 1;
      next();
    },
    async close() {
      port.isOpen = false;
      port.readable = null;
    },
  };
  function next() {
    const acts = [...(waiting.shift() ?? [])];
    port.readable = new ReadableStream<Uint8Array>(
      {
        pull(controller) {
          const act = acts.shift();
          if (act instanceof Uint8Array) controller.enqueue(act);
          else if (act === "end") controller.close();
          else if (act === "fault" || act === "gone") {
            if (act === "gone") port.readable = null;
            else next();
            controller.error(new Error(act));
          } else return new Promise<void>(() => {});
          return undefined;
        },
      },
      { highWaterMark: 0 },
    );
  }
  return port;
}

const bytes = (text: string) => new TextEncoder().encode(text);

function reading(port: SerialPort) {
  let text = "";
  const stop = new AbortController();
  const take = (piece: Uint8Array) => {
    text += new TextDecoder().decode(piece);
    if (text.includes("stop")) stop.abort();
  };
  return { done: readPort(port, 9600, take, { onOpen: () => {}, stop: stop.signal }), text: () => text };
}

test("bytes are handed on as they come until it is stopped, and the port is closed then", async () => {
  const port = portOf([bytes("1,2\n"), bytes("3,"), bytes("4\nstop")]);
  const { done, text } = reading(port);
  await done;
  expect(text()).toBe("1,2\n3,4\nstop");
  expect(port.isOpen).toBe(false);
});

test("after a passing fault of the line it reads on from the new stream", async () => {
  const port = portOf([bytes("1,2\n"), "fault"], [bytes("3,4\nstop")]);
  const { done, text } = reading(port);
  await done;
  expect(text()).toBe("1,2\n3,4\nstop");
  expect(port.opened).toBe(1);
});

test.each([
  { acts: [bytes("1,2\n"), "gone"] as Act[], says: /gone\. Was it unplugged\?/ },
  { acts: [bytes("1,2\n"), "end"] as Act[], says: /closed from the other side/ },
])("a port that is gone is told, and what came before was handed on ($acts.1)", async ({ acts, says }) => {
  const port = portOf(acts);
  const { done, text } = reading(port);
  await expect(done).rejects.toThrow(says);
  expect(text()).toBe("1,2\n");
  expect(port.isOpen).toBe(false);
});

test("a port that can not be opened is told in the browser's words, and nothing is read", async () => {
  const port = { ...portOf(), open: () => Promise.reject(new Error("The port is already open.")) };
  await expect(reading(port).done).rejects.toThrow("already open");
});
