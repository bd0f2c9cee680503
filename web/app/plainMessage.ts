import { capitalised } from "./words.ts";

/** A warning as the page says it: the name of a field in the interface means nothing here, where the fields have labels. */
export function plainMessage({ message, where }: { readonly message: string; readonly where?: string }): string {
  const isPath = where !== undefined && /^[a-z]\w*(\[\d+\])?(\.\w+(\[\d+\])?)*$/.test(where);
  return capitalised(isPath && message.startsWith(`${where}: `) ? message.slice(where.length + 2) : message);
}
