/** The parts of JSON Schema that occur in the description of the interface. */
export interface Schema {
  readonly type?: string | readonly string[];
  readonly $ref?: string;
  readonly description?: string;
  readonly unit?: string;
  readonly symbol?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly default?: unknown;
  readonly format?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema | false;
  readonly prefixItems?: readonly Schema[];
  readonly additionalProperties?: Schema | boolean;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text that stays text in a page. */
export const escaped = (text: string) => text.replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);

/** The kind of value in words, with links to named documents. */
export function typeText(schema: Schema): string {
  if (schema.$ref !== undefined) return linkTo(schema.$ref);
  const branches = schema.anyOf ?? schema.oneOf ?? schema.allOf;
  if (branches !== undefined) return [...new Set(branches.map(typeText))].join(" or ");
  if (schema.enum !== undefined) return schema.enum.map((value) => code(value)).join(" or ");
  if (schema.const !== undefined) return code(schema.const);
  if (schema.prefixItems !== undefined)
    return `list of ${schema.prefixItems.length}: ${schema.prefixItems.map(typeText).join(", ")}`;
  if (schema.items) return `list of ${typeText(schema.items)}`;
  if (typeof schema.additionalProperties === "object") return `by name: ${typeText(schema.additionalProperties)}`;
  if (schema.properties !== undefined)
    return `object with ${Object.keys(schema.properties)
      .map((name) => code(name))
      .join(", ")}`;
  return `${escaped([schema.type ?? "anything"].flat().join(" or "))}${rangeText(schema)}`;
}

function linkTo(ref: string): string {
  const name = (ref.split("/").at(-1) ?? "").replace(/Input$/, "");
  return `<a href="#schema-${escaped(name)}">${escaped(name)}</a>`;
}

const code = (value: unknown) => `<code>${escaped(String(value))}</code>`;

function rangeText({ minimum, maximum, exclusiveMinimum, exclusiveMaximum, format }: Schema): string {
  const real = (limit: number | undefined) => limit !== undefined && Math.abs(limit) < Number.MAX_SAFE_INTEGER;
  const limits = [
    real(minimum) && `at least ${minimum}`,
    real(exclusiveMinimum) && `more than ${exclusiveMinimum}`,
    real(maximum) && `at most ${maximum}`,
    real(exclusiveMaximum) && `less than ${exclusiveMaximum}`,
    format !== undefined && escaped(format),
  ].filter((limit) => limit !== false);
  return limits.length === 0 ? "" : `, ${limits.join(", ")}`;
}

const OR = '<tr><th colspan="5" scope="rowgroup">or</th></tr>';

/** A row for each field; the fields of an unnamed object within follow it, and each branch of a choice comes in turn. */
export function fieldRows(schema: Schema, prefix = ""): string {
  const branches = branchesOf(schema)?.map((branch) => fieldRows(branch, prefix));
  if (branches !== undefined) return branches.filter((rows) => rows !== "").join(OR);
  if (schema.properties === undefined) return prefix === "" ? row("", schema, true) : "";
  return Object.entries(schema.properties)
    .map(([name, field]) => {
      const path = prefix + name;
      return row(path, field, schema.required?.includes(name) ?? false) + nestedRows(field, path);
    })
    .join("");
}

const branchesOf = ({ anyOf, oneOf }: Schema) => anyOf ?? oneOf;

function nestedRows(field: Schema, path: string): string {
  if (field.$ref !== undefined) return "";
  if (field.items && field.items.$ref === undefined) return fieldRows(field.items, `${path}[].`);
  return fieldRows(field, `${path}.`);
}

function row(path: string, schema: Schema, required: boolean): string {
  const cells = [code(path), fieldType(schema), escaped(schema.unit ?? ""), escaped(schema.symbol ?? "")];
  return `<tr>${[...cells, escaped(meaning(schema, required))].map((cell) => `<td>${cell}</td>`).join("")}</tr>`;
}

/** In a table the fields of an unnamed object have rows of their own, and need not be listed. */
function fieldType(schema: Schema): string {
  if (schema.$ref !== undefined) return typeText(schema);
  if (schema.properties !== undefined || branchesOf(schema)?.every(({ properties }) => properties)) return "object";
  if (schema.items && schema.items.$ref === undefined && schema.items.properties !== undefined)
    return "list of objects";
  return typeText(schema);
}

/** The description without its unit, which has a column of its own. */
function meaning({ description = "", unit, default: otherwise }: Schema, required: boolean): string {
  const words = unit === undefined ? description : withoutEnd(description, `, ${unit}`);
  const absent = required ? "" : "May be absent";
  const taken = otherwise === undefined ? absent : `Taken where absent: ${JSON.stringify(otherwise)}`;
  return [words, taken].filter((part) => part !== "").join(". ");
}

const withoutEnd = (text: string, end: string) => (text.endsWith(end) ? text.slice(0, -end.length) : text);
