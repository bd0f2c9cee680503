import { expect } from "vitest";

export const problemOf = (code: string, where: string) =>
  expect.objectContaining({ problem: expect.objectContaining({ code, where }) });

export const codesOf = ({ warnings }: { readonly warnings: readonly { readonly code: string }[] }) =>
  warnings.map(({ code }) => code);
