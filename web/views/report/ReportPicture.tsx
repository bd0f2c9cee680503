import { useEffect, useState } from "preact/hooks";
import type { ChartSpec } from "../../charts/chartSpec.ts";

/** A picture as an image that prints and is saved with the page; null while it is drawn. */
export function ReportPicture({ spec }: { readonly spec: ChartSpec }) {
  const [drawn, setDrawn] = useState<string | null>(null);
  const [problem, setProblem] = useState(false);
  // A new object with the same numbers is the same picture.
  const key = JSON.stringify(spec);
  useEffect(() => {
    let wanted = true;
    imageOf(spec).then(
      (image) => wanted && setDrawn(image),
      () => wanted && setProblem(true),
    );
    return () => {
      wanted = false;
    };
  }, [key]);
  if (problem) return <p>The picture “{spec.title}” could not be drawn.</p>;
  if (drawn === null) return <p class="report-wait">Drawing “{spec.title}” …</p>;
  return (
    <figure class="report-picture">
      <img src={drawn} alt={`${spec.title}. ${spec.x.label} along, ${spec.y.label} up.`} width={800} height={520} />
    </figure>
  );
}

async function imageOf(spec: ChartSpec): Promise<string> {
  const { pictureFile } = await import("../../charts/pictureFile.ts");
  const blob = await pictureFile(spec, new Set());
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => fail(reader.error);
    reader.readAsDataURL(blob);
  });
}
