import { PROBLEM_CODES } from "../../shared/model/problemCodes.data.ts";
import type { OpenApiDocument } from "./openApi.ts";
import { escaped, fieldRows, type Schema, typeText } from "./schemaText.ts";

interface Parameter {
  readonly name: string;
  readonly in: string;
  readonly required?: boolean;
  readonly schema: Schema;
  readonly description?: string;
}

interface Content {
  readonly description?: string;
  readonly content?: Readonly<Record<string, { readonly schema?: Schema }>>;
}

interface Operation {
  readonly tags?: readonly string[];
  readonly summary?: string;
  readonly description?: string;
  readonly parameters?: readonly Parameter[];
  readonly requestBody?: Content;
  readonly responses?: Readonly<Record<string, Content>>;
}

interface Entry {
  readonly method: string;
  readonly path: string;
  readonly operation: Operation;
}

/** The description of the interface as one page to read, without a script. */
export function apiPage(document: OpenApiDocument): string {
  const entries = entriesOf(document);
  const tags = [...new Set(entries.map(({ operation }) => operation.tags?.[0] ?? "Other"))];
  const schemas = Object.entries(document.components.schemas as Record<string, Schema>).filter(
    ([name]) => !name.endsWith("Input"),
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${escaped(document.info.title)}: interface for programs</title>
<link rel="stylesheet" href="/api/docs.css">
</head>
<body>
<header>
<h1>${escaped(document.info.title)}: interface for programs</h1>
<p>${escaped(document.info.description ?? "")}</p>
<p>The same for a program: <a href="/api/openapi.json">openapi.json</a>. Back to the <a href="/">workbench</a>.</p>
<nav aria-label="Contents"><ul>
${[...tags, "Documents", "Codes"].map((tag) => `<li><a href="#${anchor(tag)}">${escaped(tag)}</a></li>`).join("\n")}
</ul></nav>
</header>
<main>
${tags.map((tag) => tagSection(tag, entries)).join("\n")}
<section id="documents"><h2>Documents</h2>
${schemas.map(([name, schema]) => schemaSection(name, schema)).join("\n")}
</section>
${codesSection()}
</main>
</body>
</html>
`;
}

function entriesOf({ paths }: OpenApiDocument): Entry[] {
  return Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ method, path, operation: operation as Operation })),
  );
}

const anchor = (text: string) => text.toLowerCase().replace(/[^a-z0-9]+/g, "-");

function tagSection(tag: string, entries: readonly Entry[]): string {
  const own = entries.filter(({ operation }) => (operation.tags?.[0] ?? "Other") === tag);
  return `<section id="${anchor(tag)}"><h2>${escaped(tag)}</h2>
${own.map(operationArticle).join("\n")}
</section>`;
}

function operationArticle({ method, path, operation }: Entry): string {
  const { summary = "", description, parameters = [], requestBody, responses = {} } = operation;
  return `<article>
<h3><code><b>${method.toUpperCase()}</b> ${escaped(path)}</code> ${escaped(summary)}</h3>
${description === undefined ? "" : `<p>${escaped(description)}</p>`}
${parameters.length === 0 ? "" : parameterTable(parameters)}
${requestBody === undefined ? "" : contentLine("Send", requestBody)}
${Object.entries(responses)
  .map(([status, content]) => contentLine(status === "default" ? "Refused" : `Answer ${status}`, content))
  .join("\n")}
</article>`;
}

function parameterTable(parameters: readonly Parameter[]): string {
  const rows = parameters.map(
    ({ name, in: place, required, schema, description }) =>
      `<tr><td><code>${escaped(name)}</code></td><td>${escaped(place)}</td><td>${typeText(schema)}</td><td>${escaped(description ?? schema.description ?? "")}${required ? "" : " (may be absent)"}</td></tr>`,
  );
  return `<table><thead><tr><th>Name</th><th>Where</th><th>Type</th><th>Meaning</th></tr></thead><tbody>${rows.join("")}</tbody></table>`;
}

function contentLine(label: string, { content = {}, description }: Content): string {
  const kinds = Object.entries(content).map(
    ([type, { schema }]) => `${typeText(schema ?? {})} <small>${escaped(type)}</small>`,
  );
  return `<p><b>${escaped(label)}:</b> ${kinds.length > 0 ? kinds.join(", ") : escaped(description ?? "nothing")}</p>`;
}

/** What a program that gets a code can look up; the sentence beside it in an answer has the numbers. */
function codesSection(): string {
  const rows = Object.entries(PROBLEM_CODES).map(
    ([code, meaning]) => `<tr><td><code>${escaped(code)}</code></td><td>${escaped(meaning)}</td></tr>`,
  );
  return `<section id="codes"><h2>Codes</h2>
<p>Of refusals, warnings, checks of a run and repairs of a log. A code is never used again for another meaning.</p>
<table><thead><tr><th>Code</th><th>Meaning</th></tr></thead><tbody>
${rows.join("\n")}
</tbody></table>
</section>`;
}

function schemaSection(name: string, schema: Schema): string {
  return `<article id="schema-${escaped(name)}"><h3>${escaped(name)}</h3>
${schema.description === undefined ? "" : `<p>${escaped(schema.description)}</p>`}
<table><thead><tr><th>Field</th><th>Type</th><th>Unit</th><th>Symbol</th><th>Meaning</th></tr></thead><tbody>
${fieldRows(schema)}
</tbody></table></article>`;
}
