import { InputProblem, OutOfDomain } from "../../shared/quantity/problem.ts";
import type { Job, OutcomeOf, Report } from "./jobs.ts";
import { startThread, type ThreadData, type WorkThread } from "./workThread.ts";

/** The thread died, or failed on something that is no fault of the input. */
export class WorkFailed extends Error {}

/** Nobody wants the outcome any more. */
export class WorkCancelled extends Error {}

export interface WorkOptions {
  readonly signal?: AbortSignal;
  /** Told the share of the work that is done, 0 to 1. */
  readonly onProgress?: (fraction: number) => void;
}

interface Task {
  readonly id: number;
  readonly job: Job;
  readonly onProgress: (fraction: number) => void;
  readonly settle: (outcome: unknown) => void;
  readonly fail: (reason: Error) => void;
}

/** A thread, what it does now, and the logs it has read: work on one of those is best given to it again. */
interface Seat {
  thread?: WorkThread;
  task?: Task;
  readonly read: Set<string>;
}

export interface PoolOptions {
  readonly threads?: number;
  /** Bytes of tables held by all threads together. */
  readonly cacheBytes?: number;
  /** Folder for tables that were read, see `TableFolder`; none are kept on disk where absent. */
  readonly tableFolder?: string;
  /** Time in which a cancelled job may stop by itself before its thread is ended, ms; a step of ten million rows takes less. */
  readonly patience?: number;
  readonly start?: typeof startThread;
}

/** Bytes of a log from which on it is read in one thread only, so that the others stay free for what is short. */
const LONG_LOG = 100e6;

/**
 * A few threads that do what takes long, so that the thread that answers requests never does.
 * Threads start with the first work. One that dies fails the job it had and is started again for the next.
 */
export class WorkPool {
  private readonly seats: readonly Seat[];
  private readonly waiting: Task[] = [];
  private readonly threadData: ThreadData;
  private readonly patience: number;
  private readonly start: typeof startThread;
  private nextId = 1;

  constructor(options: PoolOptions = {}) {
    const { threads = 2, cacheBytes = 300e6, tableFolder, patience = 500, start = startThread } = options;
    this.seats = Array.from({ length: threads }, () => ({ read: new Set<string>() }));
    this.threadData = { cacheBytes: cacheBytes / threads, ...(tableFolder !== undefined && { tableFolder }) };
    this.patience = patience;
    this.start = start;
  }

  /** Throws InputProblem and OutOfDomain as the work does; WorkCancelled after `signal`; WorkFailed for a fault of ours. */
  run<J extends Job>(job: J, { signal, onProgress = () => {} }: WorkOptions = {}): Promise<OutcomeOf<J>> {
    return new Promise<OutcomeOf<J>>((resolve, reject) => {
      const settle = (outcome: unknown) => resolve(outcome as OutcomeOf<J>);
      const task = { id: this.nextId++, job, onProgress, settle, fail: reject };
      if (signal?.aborted) return reject(new WorkCancelled());
      signal?.addEventListener("abort", () => this.cancel(task), { once: true });
      this.waiting.push(task);
      this.giveOut();
    });
  }

  /** How many jobs are done at the same time. */
  get threads(): number {
    return this.seats.length;
  }

  async close(): Promise<void> {
    for (const task of this.waiting.splice(0)) task.fail(new WorkCancelled());
    await Promise.all(this.seats.map((seat) => seat.thread?.stop()));
  }

  private giveOut(): void {
    for (const seat of this.seats.filter(({ task }) => task === undefined)) {
      const task = this.takeFor(seat);
      if (task === undefined) continue;
      seat.task = task;
      const log = logOf(task);
      if (log !== undefined) seat.read.add(log);
      seat.thread ??= this.open(seat);
      seat.thread.order({ id: task.id, job: task.job });
    }
  }

  /**
   * The oldest task on a log that this seat has read; else the oldest on one that no other seat is at, or is free for
   * and has read. So a log that is being read is not read a second time beside it. Long logs are left to the first seat.
   * Work without a log is for any seat.
   */
  private takeFor(seat: Seat): Task | undefined {
    const isFirst = seat === this.seats[0];
    const mayTake = ({ job }: Task) => isFirst || !("file" in job) || (job.file.size ?? 0) < LONG_LOG;
    const hasRead = (log: string | undefined) => log !== undefined && seat.read.has(log);
    const own = this.waiting.findIndex((task) => mayTake(task) && hasRead(logOf(task)));
    const others = this.seats.filter((other) => other !== seat);
    const isTheirs = (log: string | undefined, { task, read }: Seat) =>
      log !== undefined && (task === undefined ? read.has(log) : logOf(task) === log);
    const isFree = (task: Task) => mayTake(task) && !others.some((other) => isTheirs(logOf(task), other));
    const index = own >= 0 ? own : this.waiting.findIndex(isFree);
    return index < 0 ? undefined : this.waiting.splice(index, 1)[0];
  }

  private open(seat: Seat): WorkThread {
    return this.start(this.threadData, {
      onReport: (report) => this.receive(seat, report),
      onEnd: (reason) => this.ended(seat, reason),
    });
  }

  private receive(seat: Seat, report: Report): void {
    const { task } = seat;
    if (task === undefined || report.id !== task.id) return;
    if ("fraction" in report) {
      task.onProgress(report.fraction);
      return;
    }
    delete seat.task;
    conclude(task, report);
    this.giveOut();
  }

  private ended(seat: Seat, reason: string): void {
    const { task } = seat;
    delete seat.thread;
    delete seat.task;
    seat.read.clear();
    task?.fail(new WorkFailed(reason));
    this.giveOut();
  }

  private cancel(task: Task): void {
    const index = this.waiting.indexOf(task);
    if (index >= 0) this.waiting.splice(index, 1);
    const seat = this.seats.find((one) => one.task === task);
    if (seat) this.stopWork(seat, task);
    task.fail(new WorkCancelled());
  }

  /** Asks first; a thread in the middle of a long step does not hear, and is ended. */
  private stopWork(seat: Seat, task: Task): void {
    seat.thread?.order({ id: task.id, cancel: true });
    const end = () => {
      if (seat.task === task) void seat.thread?.stop();
    };
    setTimeout(end, this.patience).unref();
  }
}

/** SHA-256 of the log that a task reads; undefined for work without one. */
function logOf({ job }: Task): string | undefined {
  return "file" in job ? job.file.sha256 : undefined;
}

function conclude(task: Task, report: Exclude<Report, { fraction: number }>): void {
  if ("outcome" in report) task.settle(report.outcome);
  else if ("cancelled" in report) task.fail(new WorkCancelled());
  else if ("fault" in report) task.fail(new WorkFailed(report.fault));
  else if (report.refusal === "input") task.fail(new InputProblem(report.problem));
  else task.fail(new OutOfDomain(report.problem));
}
