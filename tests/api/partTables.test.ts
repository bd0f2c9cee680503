import { describe, expect, test } from "vitest";
import { PROJECT } from "./exampleDocuments.ts";
import { startedApp } from "./startedApp.ts";

const MOTORS = "name,Kv,R (mΩ),I0 (A),Shelf\nMotor C,300,180,0.4,B4\nMotor D,470,85,0.6,B5\n";
const RPM = { columns: [{ column: 1, field: "speedConstant", unit: "rpm/V" }] };

async function started() {
  const { app, ask } = await startedApp();
  const { id } = (await ask("POST", "/api/projects", PROJECT)).body;
  const parts = `/api/projects/${id}/parts`;
  const table = `${parts}/motors/table`;
  return { app, ask, parts, table };
}

describe("a table of parts", () => {
  test("is previewed with what it leaves open, and nothing is stored", async () => {
    const { ask, parts, table } = await started();
    const { status, body } = await ask("POST", `${table}/preview`, { text: MOTORS });
    expect(status).toBe(200);
    expect(body).toMatchObject({ open: ['The unit of "Kv": rpm/V or rad/(V·s)?'], leftOut: ["Shelf"] });
    expect((await ask("GET", parts)).body.motors).toEqual([]);
  });

  test("is refused while it leaves anything open, and nothing is stored", async () => {
    const { ask, parts, table } = await started();
    const { status, body } = await ask("POST", table, { text: MOTORS });
    expect(status).toBe(422);
    expect(body).toMatchObject({ code: "parts.open-questions", detail: expect.stringContaining('The unit of "Kv"') });
    expect((await ask("GET", parts)).body.motors).toEqual([]);
  });

  test("is imported with the answers, and what it did can be taken back", async () => {
    const { ask, parts, table } = await started();
    const { status, body } = await ask("POST", table, { text: MOTORS, choices: RPM });
    expect(status).toBe(200);
    expect(body.added.map(({ document }: { document: { name: string } }) => document.name)).toEqual([
      "Motor C",
      "Motor D",
    ]);
    expect(body).toMatchObject({ changed: [], leftOut: [] });

    const again = {
      text: "name,price\nMotor C,25\nMotor D,30",
      choices: { sameName: "update", rows: [{ row: 3, act: "skip" }] },
    };
    const update = (await ask("POST", table, again)).body;
    expect(update).toMatchObject({
      added: [],
      changed: [{ before: { version: 1 }, after: { version: 2, document: { name: "Motor C", price: 25 } } }],
      leftOut: [3],
    });
    const [{ before, after }] = update.changed;
    const back = await ask("PUT", `${parts}/motors/${after.id}`, { version: after.version, document: before.document });
    expect(back.body.document).toEqual(before.document);
  });

  test("comes out as it went in", async () => {
    const { app, ask, parts, table } = await started();
    await ask("POST", table, { text: MOTORS, choices: { ...RPM, others: "note" } });
    const written = await app.inject({ method: "GET", url: table, headers: { host: "localhost" } });
    expect(written.headers["content-type"]).toBe("text/csv; charset=utf-8");
    expect(written.headers["content-disposition"]).toBe('attachment; filename="motors.csv"');
    expect(written.body).toContain("speed constant (rpm/V)");
    const other = (await ask("POST", "/api/projects", PROJECT)).body.id;
    await ask("POST", `/api/projects/${other}/parts/motors/table`, { text: written.body });
    const documents = async (at: string) =>
      (await ask("GET", at)).body.motors.map(({ document }: { document: unknown }) => document);
    expect(await documents(`/api/projects/${other}/parts`)).toEqual(await documents(parts));
  });

  test.each([
    { text: "470\t85", code: "parts.no-head" },
    { text: "name\tKv", code: "parts.no-rows" },
  ])("that is none is refused as $code", async ({ text, code }) => {
    const { ask, table } = await started();
    expect(await ask("POST", table, { text })).toMatchObject({ status: 422, body: { code } });
  });

  test("of instruments does not exist", async () => {
    const { ask, parts } = await started();
    expect((await ask("POST", `${parts}/instruments/table`, { text: "a,b\n1,2" })).status).toBe(404);
  });
});
