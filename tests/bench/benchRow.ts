/** One line of the bench's report. */
export interface BenchRow {
  readonly what: string;
  readonly measured: string;
  readonly wanted: string;
  readonly met: boolean;
}
