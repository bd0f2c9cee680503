import { LineOutbox, type Stretch } from "./lineOutbox.ts";

/** How a post of lines went. */
export type Delivery =
  | { readonly state: "held"; readonly bytes: number }
  /** Not now: the workbench does not answer, or has no room at the moment. */
  | { readonly state: "later"; readonly why: string }
  /** Not like this, ever. */
  | { readonly state: "refused"; readonly why: string };

/** What an answer of the workbench to a post means; status 0 where none came. */
export function deliveryOf(status: number, answer: { readonly bytes: number } | { readonly why: string }): Delivery {
  if ("bytes" in answer) return { state: "held", bytes: answer.bytes };
  const isPassing = status === 0 || status === 408 || status === 429 || status >= 500;
  return { state: isPassing ? "later" : "refused", why: answer.why };
}

/** What happened to the lines of a recording so far. */
export interface SendingState {
  /** Bytes that were handed in, counted from the start of the recording. */
  readonly received: number;
  /** Bytes that are safe on disk. */
  readonly held: number;
  /** Why lines wait now; empty while all goes well. */
  readonly delayed: string;
  /** Why no more lines can be sent; empty while they can. */
  readonly refused: string;
}

export interface LineSenderOptions {
  /** Bytes of the recording that are held already. */
  readonly start?: number;
  readonly post: (stretch: Stretch) => Promise<Delivery>;
  /** Resolves after about so many milliseconds; sooner where there is reason to try again. */
  readonly pause: (milliseconds: number) => Promise<void>;
  readonly onChange?: (state: SendingState) => void;
}

/** Bytes of one post. */
const MOST = 256 * 1024;
/** Rest after each post, in which lines gather for the next, ms: a stand that writes fast must not make a post of each line. */
const GATHERING = 80;
/** First and longest wait before another try, ms. */
const PATIENCE = { first: 250, longest: 8000 } as const;

/**
 * Brings bytes to a recording in order, one post at a time, and tries again for as long as it takes: nothing is let go
 * before it is acknowledged, and nothing arrives twice, because every post says where it belongs.
 */
export class LineSender {
  private readonly outbox: LineOutbox;
  private isWorking = false;
  private work: Promise<void> = Promise.resolve();
  private delayed = "";
  private refused = "";

  constructor(private readonly options: LineSenderOptions) {
    this.outbox = new LineOutbox(options.start);
  }

  get state(): SendingState {
    const { end, size } = this.outbox;
    return { received: end, held: end - size, delayed: this.delayed, refused: this.refused };
  }

  /** What is not acknowledged, for a person to save where it can not be sent. */
  get unsent(): Uint8Array {
    return this.outbox.next(this.outbox.size)?.bytes ?? new Uint8Array();
  }

  /** Takes the next bytes and has them sent; the stretch that they are. */
  send(bytes: Uint8Array): Stretch {
    const stretch = this.outbox.add(bytes);
    this.tell();
    if (!this.isWorking) this.work = this.deliver();
    return stretch;
  }

  /** Resolves when all that came is held, or can not be sent at all. */
  async settled(): Promise<SendingState> {
    while (this.isWorking) await this.work;
    return this.state;
  }

  private async deliver(): Promise<void> {
    this.isWorking = true;
    let wait: number = PATIENCE.first;
    for (;;) {
      const stretch = this.refused === "" ? this.outbox.next(MOST) : null;
      if (stretch === null) break;
      const delivery = await this.options.post(stretch);
      if (delivery.state === "held") {
        this.outbox.acknowledge(delivery.bytes);
        this.delayed = "";
        wait = PATIENCE.first;
        this.tell();
        await this.options.pause(GATHERING);
      } else if (delivery.state === "refused") {
        this.refused = delivery.why;
        this.tell();
      } else {
        this.delayed = delivery.why;
        this.tell();
        await this.options.pause(wait);
        wait = Math.min(2 * wait, PATIENCE.longest);
      }
    }
    this.isWorking = false;
  }

  private tell(): void {
    this.options.onChange?.(this.state);
  }
}
