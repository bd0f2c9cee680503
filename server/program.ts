/** Name and version that results carry; the version is put in when the program is built. */
export const PROGRAM = `Bollard Bench ${process.env["BOLLARD_VERSION"] ?? "development"}`;
