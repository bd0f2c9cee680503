import { capitalised } from "./words.ts";

/** Where on the page a thing is stated or done that a warning asks for. */
const PLACES: Readonly<Record<string, string>> = {
  "bench.fluid-assumed": "The water is under “On the stand”.",
  "bench.motor-constants": "“Identify from runs” under Parts does that.",
  "bench.meters-exact": "Keep the meters as instruments under Parts and name them under “On the stand”.",
  "bench.no-calibration": "State it under “On the stand”, or keep the table of weights as an instrument under Parts.",
};

/** A warning as the page says it: the name of a field in the interface means nothing here, where the fields have labels. */
export function plainMessage({ message, where, code }: PlainWarning): string {
  // "Net thruster: asternEstimate" names the drive, and then its field.
  const field = where?.split(": ").at(-1);
  const isPath = field !== undefined && /^[a-z]\w*(\[\d+\])?(\.\w+(\[\d+\])?)*$/.test(field);
  const said = capitalised(isPath && message.startsWith(`${field}: `) ? message.slice(field.length + 2) : message);
  const place = PLACES[code ?? ""];
  return place === undefined ? said : `${said} ${place}`;
}

interface PlainWarning {
  readonly message: string;
  readonly where?: string;
  readonly code?: string;
}
