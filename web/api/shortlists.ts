import type { ShortlistRequestInput } from "../../shared/model/shortlist.ts";
import type { PropellerDesignRequestInput, PropellerDesigns } from "../../shared/model/shortlistDesign.ts";
import type { ShortlistEntry, StoredShortlist } from "../../shared/model/shortlistStored.ts";
import { followPosted, type ToldOfWork } from "./postedWork.ts";
import { ask } from "./request.ts";

const at = (projectId: string, ...parts: readonly string[]) =>
  `/api/${["projects", projectId, "shortlists", ...parts].map(encodeURIComponent).join("/")}`;

/** Searches a parts box; the outcome is kept by the workbench. The returned function stops the search. */
export const searchParts = (projectId: string, request: ShortlistRequestInput, told: ToldOfWork<StoredShortlist>) =>
  followPosted({ path: at(projectId, "progress"), body: { request }, name: "shortlist" }, told);

/** Diameter and pitch of series propellers for each motor. The returned function stops the work. */
export const designPropellers = (
  projectId: string,
  request: PropellerDesignRequestInput,
  told: ToldOfWork<PropellerDesigns>,
) => followPosted({ path: at(projectId, "designs", "progress"), body: request, name: "designs" }, told);

export const listShortlists = async (projectId: string) =>
  (await ask<{ shortlists: ShortlistEntry[] }>(at(projectId))).shortlists;
export const readShortlist = (projectId: string, id: string) => ask<StoredShortlist>(at(projectId, id));
export const deleteShortlist = (projectId: string, { id, version }: Pick<ShortlistEntry, "id" | "version">) =>
  ask<unknown>(`${at(projectId, id)}?version=${version}`, { method: "DELETE" });
export const restoreShortlist = (projectId: string, id: string) =>
  ask<StoredShortlist>(at(projectId, id, "restore"), { method: "POST" });
/** Address of a kept shortlist as a file. */
export const shortlistFile = (projectId: string, id: string, format: "csv" | "json") =>
  `${at(projectId, id, "file")}?format=${format}`;
