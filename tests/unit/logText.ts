import { readLog } from "../../shared/log/readLog.ts";

export const read = (text: string) => readLog(new TextEncoder().encode(text), "stand.csv");

export const rowsOf = (text: string) => {
  const table = read(text);
  return Array.from({ length: table.rows }, (_, row) => table.columns.map((column) => column[row]!));
};

export const MISSING = Number.NaN;
