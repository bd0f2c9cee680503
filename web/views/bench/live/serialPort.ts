/** What is used of a port of the Web Serial API (W3C community group draft), which the type library does not have yet. */
export interface SerialPort {
  readonly readable: ReadableStream<Uint8Array> | null;
  open(options: { readonly baudRate: number; readonly bufferSize?: number }): Promise<void>;
  close(): Promise<void>;
}

interface Serial {
  requestPort(): Promise<SerialPort>;
}

/** The serial ports of this browser; undefined where it offers none. */
export function serialOf(browser: object): Serial | undefined {
  return (browser as { readonly serial?: Serial }).serial;
}

/** Bytes that the browser may hold for us while the page is busy. */
const BUFFER_BYTES = 1 << 16;

/**
 * Reads a port until `stop`, which closes it. A break or a framing error costs the bytes it hit, and reading goes on.
 * Throws where the port can not be opened, and when it is gone.
 */
export async function readPort(
  port: SerialPort,
  baudRate: number,
  take: (bytes: Uint8Array) => void,
  { onOpen, stop }: { readonly onOpen: () => void; readonly stop: AbortSignal },
): Promise<void> {
  await port.open({ baudRate, bufferSize: BUFFER_BYTES });
  onOpen();
  try {
    let failed: ReadableStream<Uint8Array> | null = null;
    while (!stop.aborted) {
      const { readable } = port;
      // After a passing fault the port has a new stream; without one it is gone.
      if (readable === null || readable === failed) throw new Error("The port is gone. Was it unplugged?");
      if (await readStream(readable, take, stop)) failed = readable;
      else if (!stop.aborted) throw new Error("The port was closed from the other side.");
    }
  } finally {
    await port.close().catch(() => undefined);
  }
}

/** Reads to the end of the stream, or to `stop`; true where a fault ended it. */
async function readStream(
  readable: ReadableStream<Uint8Array>,
  take: (bytes: Uint8Array) => void,
  stop: AbortSignal,
): Promise<boolean> {
  const reader = readable.getReader();
  const cancel = () => void reader.cancel().catch(() => undefined);
  stop.addEventListener("abort", cancel, { once: true });
  try {
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return false;
      take(value);
    }
  } catch {
    return true;
  } finally {
    stop.removeEventListener("abort", cancel);
    reader.releaseLock();
  }
}
