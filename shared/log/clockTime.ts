/** A time of day, with its day where the text has a full ISO 8601 date. */
export interface ClockTime {
  /** Days since 1970-01-01 UTC; null where the text has no ISO date. */
  readonly day: number | null;
  /** Whole seconds since midnight (UTC where an offset is written). */
  readonly seconds: number;
  /** Part of a second, 0 to 1. */
  readonly fraction: number;
  /** Decimals of the second that are written. */
  readonly decimals: number;
}

const ISO_DATE = String.raw`(\d{4})-(\d{2})-(\d{2})`;
const OTHER_DATE = String.raw`\d{1,2}[./-]\d{1,2}[./-]\d{2,4}|\d{4}[./]\d{1,2}[./]\d{1,2}`;
const TIME = String.raw`(\d{1,2}):([0-5]\d):([0-5]\d|60)(?:[.,](\d{1,9}))?\s?([AaPp][Mm])?(Z|[+-]\d{2}:?\d{2})?`;
const CLOCK = new RegExp(`^(?:(?:${ISO_DATE}|${OTHER_DATE})(?:T|\\s{1,3}))?${TIME}$`);
const MINUTES = /^(\d{1,3}):([0-5]\d)(?:[.,](\d{1,9}))?$/;

const DAY = 86_400;

/**
 * Reads an ISO 8601 date and time, a time of day hh:mm:ss(.fff), or minutes mm:ss(.fff); undefined for other text.
 * Dates whose order of day and month is anybody's guess lend only their time of day.
 */
export function readClock(text: string): ClockTime | undefined {
  if (text.length > 40 || !text.includes(":")) return undefined;
  const minutes = MINUTES.exec(text);
  if (minutes) {
    return { day: null, seconds: Number(minutes[1]) * 60 + Number(minutes[2]), ...fractionOf(minutes[3]) };
  }
  const match = CLOCK.exec(text);
  if (!match) return undefined;
  const [, year, month, date, hour, minute, second, fraction, half, zone] = match;
  const seconds = hours(Number(hour), half) * 3600 + Number(minute) * 60 + Number(second) - offsetSeconds(zone);
  const day = year === undefined ? null : Date.UTC(Number(year), Number(month) - 1, Number(date)) / (DAY * 1000);
  return { day, seconds, ...fractionOf(fraction) };
}

function fractionOf(digits = ""): { fraction: number; decimals: number } {
  return { fraction: digits === "" ? 0 : Number(`0.${digits}`), decimals: digits.length };
}

function hours(hour: number, half: string | undefined): number {
  if (half === undefined) return hour;
  return (hour % 12) + (half.toLowerCase() === "pm" ? 12 : 0);
}

function offsetSeconds(zone: string | undefined): number {
  if (zone === undefined || zone === "Z") return 0;
  const digits = zone.slice(1).replace(":", "");
  const size = Number(digits.slice(0, 2)) * 3600 + Number(digits.slice(2)) * 60;
  return zone.startsWith("-") ? -size : size;
}

/** Turns the clock times of one column into seconds since the first of them, over midnight too. */
export class ElapsedTime {
  private first: ClockTime | null = null;
  private last = 0;
  private midnights = 0;

  /** Seconds since the first time read, to the nanosecond. */
  secondsAt(clock: ClockTime): number {
    this.first ??= clock;
    const first = this.first;
    const days = clock.day !== null && first.day !== null ? clock.day - first.day : this.midnights;
    const elapsed = this.between(first, clock, days);
    // Half a day back is midnight; less is a clock that was set or a logger that started again, shown as it is.
    if (clock.day === null && elapsed - this.last < -DAY / 2) {
      this.midnights++;
      this.last = elapsed + DAY;
      return this.last;
    }
    this.last = elapsed;
    return elapsed;
  }

  private between(first: ClockTime, clock: ClockTime, days: number): number {
    const seconds = days * DAY + clock.seconds - first.seconds + (clock.fraction - first.fraction);
    return Math.round(seconds * 1e9) / 1e9;
  }
}
