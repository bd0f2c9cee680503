import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import type { Problem } from "../../../../shared/quantity/problem.ts";

/** As many vehicles as a project keeps side by side. */
export const MOST_BUILDS = 8;
export const MOST_THRUSTERS = 16;

/** A name that none of `taken` has: "Dabchick", "Dabchick 2", "Dabchick 3" ... */
export function freeName(wanted: string, taken: readonly string[]): string {
  const isTaken = (name: string) => taken.some((one) => one.trim() === name);
  const base = wanted.trim() || "Vehicle";
  if (!isTaken(base)) return base;
  let number = 2;
  while (isTaken(`${base} ${number}`)) number++;
  return `${base} ${number}`;
}

/** Why a name can not be given; empty where it can. */
export function nameGap(wanted: string, others: readonly string[]): string {
  if (wanted.trim() === "") return "Needed: a name.";
  return others.includes(wanted.trim()) ? `${wanted.trim()} is there already. Needed: another name.` : "";
}

/** A name with its ends trimmed and its length kept to what a document takes. */
export const shortName = (name: string) => name.trim().slice(0, 120).trim();

export type Builds = readonly VehicleBuild[];

export const withBuild = (builds: Builds, at: number, build: VehicleBuild): VehicleBuild[] =>
  at < builds.length ? builds.with(at, build) : [...builds];

/** The builds with a copy of one behind it, under a name of its own. */
export function withCopy(builds: Builds, at: number): VehicleBuild[] {
  const build = builds[at];
  if (build === undefined || builds.length >= MOST_BUILDS) return [...builds];
  const copy = {
    ...build,
    name: freeName(
      shortName(`${build.name}, copy`),
      builds.map(({ name }) => name),
    ),
  };
  return builds.toSpliced(at + 1, 0, copy);
}

/** Which build is shown: the one asked for, or the last there is. -1: there is none. */
export const shownPlace = (builds: Builds, wanted: number): number => Math.min(Math.max(wanted, 0), builds.length - 1);

/** Builds of a document; an empty list is left away, as in a project that never had one. */
export function withVehicles<P extends { readonly vehicles?: VehicleBuild[] }>(document: P, builds: VehicleBuild[]): P {
  const { vehicles: _old, ...rest } = document;
  return (builds.length === 0 ? rest : { ...rest, vehicles: builds }) as P;
}

/** A value without one of its keys; for parts of a build that may be absent. */
export function without<T extends object, K extends keyof T>(whole: T, key: K): Omit<T, K> {
  const { [key]: _gone, ...rest } = whole;
  return rest;
}

/** What keeps a build from being a vehicle, as sentences. */
export const gapText = (problems: readonly Problem[]): string =>
  problems.map(({ found, mend }) => `${found}. ${mend}.`).join(" ");
