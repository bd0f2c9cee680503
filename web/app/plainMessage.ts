import { capitalised } from "./words.ts";

/** A warning as the page says it: the name of a field in the interface means nothing here, where the fields have labels. */
export function plainMessage({ message, where }: { readonly message: string; readonly where?: string }): string {
  // "Net thruster: asternEstimate" names the drive, and then its field.
  const field = where?.split(": ").at(-1);
  const isPath = field !== undefined && /^[a-z]\w*(\[\d+\])?(\.\w+(\[\d+\])?)*$/.test(field);
  return capitalised(isPath && message.startsWith(`${field}: `) ? message.slice(field.length + 2) : message);
}
