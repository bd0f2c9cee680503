import { join } from "node:path";
import helmet from "@fastify/helmet";
import multipart from "@fastify/multipart";
import rateLimit from "@fastify/rate-limit";
import swagger from "@fastify/swagger";
import fastify, { type FastifyInstance } from "fastify";
import { serializerCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { OPEN_API } from "./docs/openApi.ts";
import { answerProblem } from "./problems/answerProblem.ts";
import { Refusal } from "./problems/problemDetails.ts";
import { checkRequest } from "./problems/requestCheck.ts";
import { BODY_LIMIT, FILE_LIMIT, tooMany } from "./problems/serverRefusals.ts";
import { PROJECT_FOLDER } from "./projectFolder.ts";
import { clearRecordings } from "./recording/clearRecordings.ts";
import { LiveResults } from "./recording/liveResults.ts";
import { Recorder } from "./recording/recorder.ts";
import { bundlesRoute } from "./routes/bundles.ts";
import { computeRoutes } from "./routes/compute.ts";
import { computeBladeRoutes } from "./routes/computeBlade.ts";
import { computeBladeElementsRoutes } from "./routes/computeBladeElements.ts";
import { computeDriveRoutes } from "./routes/computeDrive.ts";
import { computePropellerRoutes } from "./routes/computePropeller.ts";
import { computeVehicleRoutes } from "./routes/computeVehicle.ts";
import { docsRoutes } from "./routes/docs.ts";
import { healthRoutes } from "./routes/health.ts";
import { insideProject } from "./routes/insideProject.ts";
import { servePage } from "./routes/page.ts";
import { projectRoutes } from "./routes/projects.ts";
import type { Workbench } from "./routes/workbench.ts";
import { PERMISSIONS, SECURITY_HEADERS } from "./security/headers.ts";
import { keepToOwnAddress } from "./security/ownAddress.ts";
import type { Store } from "./store/store.ts";
import { Reductions } from "./work/reductions.ts";
import { WorkPool } from "./work/workPool.ts";

export interface AppOptions {
  readonly store: Store;
  /** Threads to work with; the app makes its own where none are given, and stops those when it closes. */
  readonly pool?: WorkPool;
  /** Where the built page stands. */
  readonly webFolder?: string;
  /** A page asks a few a second; a script in a loop some hundred. */
  readonly requestsPerMinute?: number;
  readonly fileLimit?: number;
}

/** The server, ready to listen or to be asked without a port. Closing it leaves the store open. */
export async function buildApp(options: AppOptions): Promise<FastifyInstance> {
  const {
    store,
    pool = new WorkPool({ tableFolder: options.store.files.cacheFolder() }),
    webFolder = join(PROJECT_FOLDER, ".build", "web"),
  } = options;
  const app = fastify({ bodyLimit: BODY_LIMIT, forceCloseConnections: true }).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(checkRequest);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler(answerProblem);
  keepToOwnAddress(app);
  await protect(app, options);
  await app.register(swagger, OPEN_API);
  const recorder = new Recorder(store.files.recordingFolder(), options.fileLimit);
  await clearRecordings({ store, recorder });
  const live = new LiveResults({ store, pool, recorder });
  await addRoutes(app, { store, pool, reductions: new Reductions(pool), recorder, live });
  await servePage(app, webFolder);
  if (options.pool === undefined) app.addHook("onClose", () => pool.close());
  return app;
}

async function protect(app: FastifyInstance, { requestsPerMinute = 12_000, fileLimit = FILE_LIMIT }: AppOptions) {
  await app.register(helmet, SECURITY_HEADERS);
  app.addHook("onRequest", async (_, reply) => void reply.header("permissions-policy", PERMISSIONS));
  await app.register(rateLimit, {
    max: requestsPerMinute,
    timeWindow: "1 minute",
    errorResponseBuilder: (_, { after }) => new Refusal(429, tooMany(after)),
  });
  await app.register(multipart, { limits: { fileSize: fileLimit, files: 1, fields: 5, parts: 6 } });
}

async function addRoutes(app: FastifyInstance, workbench: Workbench): Promise<void> {
  await app.register(
    async (api) => {
      // What is stored may change at any moment; only the files of the page may be kept by a browser.
      api.addHook("onSend", async (_, reply) => void reply.header("cache-control", "no-store"));
      await api.register(healthRoutes);
      await api.register(docsRoutes);
      await api.register(computeRoutes, { prefix: "/compute" });
      await api.register(computePropellerRoutes, { prefix: "/compute" });
      await api.register(computeBladeRoutes, { prefix: "/compute" });
      await api.register(computeDriveRoutes, { prefix: "/compute" });
      await api.register(computeBladeElementsRoutes, { prefix: "/compute" });
      await api.register(computeVehicleRoutes, { prefix: "/compute", workbench });
      await api.register(bundlesRoute, { prefix: "/bundles", workbench });
      await api.register(projectRoutes, { prefix: "/projects", workbench });
      await api.register(insideProject, { prefix: "/projects/:projectId", workbench });
    },
    { prefix: "/api" },
  );
}
