import fc from "fast-check";
import { expect, test } from "vitest";
import { z } from "zod";
import { linksOf, withNewIdentities } from "../../server/bundle/withNewIdentities.ts";
import { PART_SCHEMAS } from "../../shared/model/parts/partKinds.ts";
import { Project } from "../../shared/model/project.ts";
import { Run } from "../../shared/model/run.ts";
import { KeptShortlist } from "../../shared/model/shortlistStored.ts";

const names = fc.constantFrom("motorId", "packId", "instrumentIds", "id", "name", "note", "drives", "identity");
const document = (ids: readonly string[]) =>
  fc.letrec((tie) => ({
    value: fc.oneof(
      { depthSize: "small" },
      fc.constantFrom(...ids),
      fc.string(),
      fc.double({ noNaN: true }),
      fc.constant(null),
      fc.boolean(),
      fc.array(tie("value"), { maxLength: 4 }),
      fc.dictionary(names, tie("value"), { maxKeys: 5 }),
    ),
  })).value;

const cases = fc
  .uniqueArray(fc.uuid(), { minLength: 4, maxLength: 10 })
  .chain((ids) => fc.record({ ids: fc.constant(ids), value: document(ids) }));

test("every link leads to the new identity of what it led to, and back again nothing has changed", () => {
  fc.assert(
    fc.property(cases, ({ ids, value }) => {
      const half = Math.floor(ids.length / 2);
      const given = new Map(ids.slice(0, half).map((id, i) => [id, ids[half + i]!]));
      const clean = withNewIdentities(value, new Map([...given.values()].map((id) => [id, "elsewhere"])));
      const moved = withNewIdentities(clean, given);
      expect(linksOf(moved)).toEqual(linksOf(clean).map((id) => given.get(id) ?? id));
      const back = new Map([...given].map(([before, after]) => [after, before]));
      expect(withNewIdentities(moved, back)).toEqual(clean);
    }),
  );
});

test("a text that happens to be an identity stays as a person wrote it", () => {
  const id = "123e4567-e89b-42d3-a456-426614174000";
  const run = { note: id, name: id, propellerId: id, recipe: { instrumentIds: { thrust: id } } };
  expect(withNewIdentities(run, new Map([[id, "new"]]))).toEqual({
    ...{ note: id, name: id, propellerId: "new" },
    recipe: { instrumentIds: { thrust: "new" } },
  });
});

/** Names of the members of a JSON Schema that hold an identity, by its form or by what is said of it. */
function identityMembers(schema: unknown, name = ""): string[] {
  if (Array.isArray(schema)) return schema.flatMap((one) => identityMembers(one, name));
  if (typeof schema !== "object" || schema === null) return [];
  const { format, description, properties, ...rest } = schema as Record<string, unknown>;
  const isIdentity = format === "uuid" || /by its identity|Part that carries/.test(String(description ?? ""));
  const inner = Object.entries((properties ?? {}) as object).flatMap(([key, one]) => identityMembers(one, key));
  return [...(isIdentity ? [name] : []), ...inner, ...identityMembers(Object.values(rest), name)];
}

test("every member of a stored document that names another document is one that is led to its new identity", () => {
  const schemas = [Project, Run, KeptShortlist, ...Object.values(PART_SCHEMAS)];
  const members = schemas.flatMap((schema) => identityMembers(z.toJSONSchema(schema, { io: "input" })));
  expect(new Set(members)).toEqual(
    new Set([
      "propellerId",
      "takenPartIds",
      "packId",
      "motorId",
      "controllerId",
      "gearId",
      "tetherId",
      "instrumentIds",
    ]),
  );
  const id = "123e4567-e89b-42d3-a456-426614174000";
  for (const member of members) expect(linksOf({ [member]: id }), member).toEqual([id]);
});
