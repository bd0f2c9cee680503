import type { FastifyHelmetOptions } from "@fastify/helmet";

/** Everything comes from this server; no inline script or style, no frame around it, nothing sent elsewhere. */
export const SECURITY_HEADERS: FastifyHelmetOptions = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", "data:", "blob:"],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      workerSrc: ["'self'"],
      manifestSrc: ["'self'"],
      formAction: ["'self'"],
      baseUri: ["'none'"],
      frameAncestors: ["'none'"],
    },
  },
  // The server speaks plain HTTP to this computer alone; asking for TLS would only break it.
  strictTransportSecurity: false,
  referrerPolicy: { policy: "no-referrer" },
};
