import { saveFile } from "../../charts/saveFile.ts";
import { reportPage } from "./reportPage.ts";
import style from "./reportSheet.css?raw";

/** Hands the sheet that is on the screen to the person as one file. */
export function saveReport(name: string, sheet: Element): void {
  const page = reportPage({ name, sheet: sheet.outerHTML, style });
  saveFile(
    new Blob([page], { type: "text/html;charset=utf-8" }),
    `${name.replaceAll(/[/\\:*?"<>|]/g, "_")} report.html`,
  );
}
