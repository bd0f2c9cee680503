import type { PartKind, PartOf } from "../../shared/model/parts/partKinds.ts";
import type { Project } from "../../shared/model/project.ts";
import type { Recording } from "../../shared/model/recording.ts";
import type { Run } from "../../shared/model/run.ts";
import type { KeptShortlist } from "../../shared/model/shortlistStored.ts";
import type { Connection } from "./connection.ts";
import { DocumentShelf } from "./documentShelf.ts";
import type { FileVault, ReceivedFile } from "./fileVault.ts";

const ONE_OF = {
  propellers: "propeller",
  motors: "motor",
  controllers: "controller",
  packs: "pack",
  tethers: "tether",
  gears: "gear",
  instruments: "instrument",
} as const;

/** Everything a person has put into the workbench. Documents are in the database, bytes of logs in the vault. */
export class Store {
  readonly projects: DocumentShelf<Project>;

  constructor(
    private readonly connection: Connection,
    readonly files: FileVault,
    private readonly now: () => Date = () => new Date(),
  ) {
    this.projects = new DocumentShelf(connection, now, { table: "projects", kind: "project", owner: {} });
  }

  parts<K extends PartKind>(projectId: string, kind: K): DocumentShelf<PartOf[K]> {
    const owner = { project_id: projectId, kind };
    return new DocumentShelf(this.connection, this.now, { table: "parts", kind: ONE_OF[kind], owner });
  }

  runs(projectId: string): DocumentShelf<Run> {
    return new DocumentShelf<Run>(this.connection, this.now, {
      table: "runs",
      kind: "run",
      owner: { project_id: projectId },
      indexed: (run) => ({ sha256: run.file.sha256 }),
    });
  }

  /** Runs whose log is still being written. */
  recordings(projectId: string): DocumentShelf<Recording> {
    const owner = { project_id: projectId };
    return new DocumentShelf(this.connection, this.now, { table: "recordings", kind: "recording", owner });
  }

  /** Shortlists that were made, with what was asked. */
  shortlists(projectId: string): DocumentShelf<KeptShortlist> {
    const owner = { project_id: projectId };
    return new DocumentShelf(this.connection, this.now, { table: "shortlists", kind: "shortlist", owner });
  }

  /** Recordings of all projects that can not be had back: those that became runs, and those discarded `days` ago or more. */
  recordingsOver(days: number): string[] {
    const before = new Date(this.now().getTime() - days * 86_400_000).toISOString();
    const sql = `SELECT id FROM recordings
      WHERE deleted_at IS NOT NULL AND (deleted_at <= ? OR id IN (SELECT id FROM runs))`;
    return this.connection.rows(sql, before).map((row) => String(row["id"]));
  }

  /** Notes that a kept file is there; must come before a run that rests on it. */
  noteFile({ sha256, size }: ReceivedFile): void {
    const sql = "INSERT INTO files (sha256, size, received_at) VALUES (?, ?, ?) ON CONFLICT DO NOTHING";
    this.connection.run(sql, sha256, size, this.now().toISOString());
  }

  /** Whether the bytes with this hash were received and kept. */
  hasFile(sha256: string): boolean {
    return this.connection.rows("SELECT 1 FROM files WHERE sha256 = ?", sha256).length > 0;
  }

  /** All writes of `action` or none. */
  transaction<T>(action: () => T): T {
    return this.connection.transaction(action);
  }

  close(): void {
    this.connection.close();
  }
}
