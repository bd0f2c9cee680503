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

/** What of the browser a page of this server may use: a serial port, when a person chooses one. Nothing else that can be asked. */
export const PERMISSIONS = [
  "serial=(self)",
  ...["camera", "microphone", "geolocation", "usb", "hid", "midi", "payment"].map((name) => `${name}=()`),
].join(", ");
