import type { SwaggerOptions } from "@fastify/swagger";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { PROGRAM } from "../program.ts";

type Operation = Record<string, unknown> & { responses?: Record<string, unknown> };
export interface OpenApiDocument {
  readonly openapi: string;
  readonly info: { readonly title: string; readonly version: string; readonly description?: string };
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { readonly schemas: Record<string, unknown> };
}

/** The types of the plugin allow older formats as well; `OPEN_API` asks for this one. */
const isOpenApi = (document: object): document is OpenApiDocument => "openapi" in document;

const DESCRIPTION =
  `Every number is in SI units; each field names its own. An uncertain number has its value, its standard
uncertainty and its 95 % interval. What is refused is answered with problem details (RFC 9457): a code that stays the same, the
place it is about, and a sentence with what to do. A write names the version it was made from and is refused with 409 if
another came before.`.replaceAll("\n", " ");

const UPLOAD = {
  required: true,
  content: {
    "multipart/form-data": {
      schema: {
        type: "object",
        required: ["file"],
        properties: { file: { type: "string", format: "binary", description: "The log, up to 2 GB" } },
      },
    },
  },
};

const LINES = {
  required: true,
  content: { "text/plain": { schema: { type: "string", description: "Lines as the stand writes them" } } },
};

/** Bodies that are taken as they come, past the schema of their route. */
const STREAMED: Readonly<Record<string, unknown>> = {
  "/api/projects/{projectId}/runs": UPLOAD,
  "/api/projects/{projectId}/recordings/{id}/lines": LINES,
};

const REFUSED = {
  description: "Refused",
  content: { "application/problem+json": { schema: { $ref: "#/components/schemas/ProblemDetails" } } },
};

/** How the description of the interface is made from the schemas of the routes. */
export const OPEN_API: SwaggerOptions = {
  openapi: {
    openapi: "3.1.0",
    info: { title: "Bollard Bench", version: PROGRAM.replace(/^.* /, ""), description: DESCRIPTION },
  },
  transform: jsonSchemaTransform,
  transformObject: (document) => {
    const made = jsonSchemaTransformObject(document);
    if (isOpenApi(made)) complete(made);
    return made;
  },
};

/** Adds what a schema of a route can not say: the streamed file, and that anything may be refused. */
function complete(document: OpenApiDocument): void {
  for (const operation of Object.values(document.paths).flatMap((path) => Object.values(path))) {
    operation.responses = { ...operation.responses, default: REFUSED };
  }
  for (const [path, requestBody] of Object.entries(STREAMED)) {
    const operation = document.paths[path]?.["post"];
    if (operation !== undefined) operation["requestBody"] = requestBody;
  }
}
