import { buildAll } from "../server/build.mjs";
import { sourceStamp } from "../server/sourceStamp.mjs";

/** What is started in a process or a thread of its own is the built program; it is built where a source has changed. */
export default () => buildAll(sourceStamp());
