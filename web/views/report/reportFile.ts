import { saveFile } from "../../charts/saveFile.ts";
import sheetStyle from "./reportSheet.css?raw";

/** Nothing is loaded and nothing runs: a reader may open the file under the strictest rules. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

/** A page that stands alone: the sheet as it is on the screen, with its style inside. */
export function reportPage(name: string, sheet: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(`${name}: report`)}</title>
<style>
${sheetStyle}</style>
</head>
<body>
${sheet}
</body>
</html>
`;
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (words: string) => words.replaceAll(/[&<>"]/g, (sign) => ENTITIES[sign]!);

/** Hands the sheet that is on the screen to the person as one file. */
export function saveReport(name: string, sheet: Element): void {
  const page = reportPage(name, sheet.outerHTML);
  saveFile(
    new Blob([page], { type: "text/html;charset=utf-8" }),
    `${name.replaceAll(/[/\\:*?"<>|]/g, "_")} report.html`,
  );
}
