import { expect, test } from "vitest";
import { escaped, fieldRows, type Schema, typeText } from "../../server/docs/schemaText.ts";

test("text stays text in a page", () => {
  expect(escaped(`<script>alert("x" & 'y')</script>`)).toBe(
    "&lt;script&gt;alert(&quot;x&quot; &amp; &#39;y&#39;)&lt;/script&gt;",
  );
});

test.each<{ schema: Schema; says: string; why: string }>([
  {
    schema: { type: "number", exclusiveMinimum: 0, maximum: 1 },
    says: "number, more than 0, at most 1",
    why: "limits",
  },
  { schema: { type: "integer", minimum: -9007199254740991 }, says: "integer", why: "no limit anyone set" },
  { schema: { $ref: "#/components/schemas/RunInput" }, says: '<a href="#schema-Run">Run</a>', why: "a document" },
  { schema: { anyOf: [{ type: "number" }, { type: "null" }] }, says: "number or null", why: "a choice" },
  { schema: { type: "array", items: { type: "string" } }, says: "list of string", why: "a list" },
  {
    schema: { prefixItems: [{ type: "number" }, { type: "number" }] },
    says: "list of 2: number, number",
    why: "a pair",
  },
  { schema: { enum: ["a", "b"] }, says: "<code>a</code> or <code>b</code>", why: "words to choose from" },
])("$schema is $says ($why)", ({ schema, says }) => {
  expect(typeText(schema)).toBe(says);
});

test("a row holds name, type, unit, symbol and meaning, the unit only once", () => {
  const diameter: Schema = { type: "number", unit: "m", symbol: "D", description: "Diameter over the blade tips, m" };
  expect(fieldRows({ properties: { diameter }, required: ["diameter"] })).toBe(
    "<tr><td><code>diameter</code></td><td>number</td><td>m</td><td>D</td><td>Diameter over the blade tips</td></tr>",
  );
});

test("fields of a choice come in turn, with an or between them", () => {
  const branch = (name: string): Schema => ({ properties: { [name]: { type: "number" } }, required: [name] });
  const rows = fieldRows({ properties: { tare: { oneOf: [branch("a"), branch("b")] } }, required: ["tare"] });
  expect(rows.match(/<code>tare[^<]*<\/code>|>or</g)).toEqual([
    "<code>tare</code>",
    "<code>tare.a</code>",
    ">or<",
    "<code>tare.b</code>",
  ]);
});
