/** What the fake port of `fakeSerialPort` is driven by, on `window`. */
export interface FakeStand {
  /** The stand writes to the port. */
  write(text: string): void;
  /** The cable is pulled. */
  unplug(): void;
  /** Rate that the port was opened with; null while it is closed. */
  baudRate: number | null;
}

/**
 * Put into a page before its own scripts: `navigator.serial` with one port, as the Web Serial draft describes it. What
 * the stand writes while the port is closed is lost, as on a cable.
 */
export function fakeSerialPort(): void {
  let feed: ReadableStreamDefaultController<Uint8Array> | null = null;
  const stand: FakeStand = {
    write: (text) => feed?.enqueue(new TextEncoder().encode(text)),
    unplug: () => {
      port.readable = null;
      feed?.error(new DOMException("The device has been lost.", "NetworkError"));
      feed = null;
    },
    baudRate: null,
  };
  const port = {
    readable: null as ReadableStream<Uint8Array> | null,
    async open({ baudRate }: { baudRate: number }) {
      if (stand.baudRate !== null) throw new DOMException("The port is already open.", "InvalidStateError");
      stand.baudRate = baudRate;
      port.readable = new ReadableStream({
        start: (controller) => {
          feed = controller;
        },
        cancel: () => {
          feed = null;
        },
      });
    },
    async close() {
      stand.baudRate = null;
      port.readable = null;
      feed = null;
    },
  };
  Object.defineProperty(navigator, "serial", { value: { requestPort: async () => port }, configurable: true });
  Object.assign(window, { stand });
}
