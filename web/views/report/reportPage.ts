/** Nothing is loaded and nothing runs: a reader may open the file under the strictest rules. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

interface ReportPage {
  readonly name: string;
  /** Markup of the sheet, pictures inside. */
  readonly sheet: string;
  readonly style: string;
}

/** A page that stands alone: the sheet as it is on the screen, with its style inside. */
export function reportPage({ name, sheet, style }: ReportPage): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(`${name}: report`)}</title>
<style>
${style}</style>
</head>
<body>
${sheet}
</body>
</html>
`;
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (words: string) => words.replaceAll(/[&<>"]/g, (sign) => ENTITIES[sign]!);
