import type { LayoutAnswer } from "../../../../shared/model/vehicle/layoutAnswer.ts";
import type { LayoutRequest } from "../../../../shared/model/vehicle/layoutRequest.ts";
import { allocationTable } from "../../../../shared/vehicle/layout/allocationTable.ts";
import { Caution } from "../../../app/Caution.tsx";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { fileNameOf } from "../../../charts/chartCsv.ts";
import { saveFile } from "../../../charts/saveFile.ts";
import "./layout.css";
import { lossTable, reachRows } from "./layoutModel.ts";
import { Outlines } from "./Outlines.tsx";
import { SpinAdvice } from "./SpinAdvice.tsx";

interface LayoutResultsProps {
  /** Name of the vehicle, for files. */
  readonly name: string;
  readonly request: LayoutRequest;
  readonly layout: LayoutAnswer;
  /** What the limits of the thrusters rest on. */
  readonly basis: string;
}

/** What a layout can do: reach each way, outlines of force, motions, losses, spin balance, table for a control system. */
export function LayoutResults({ name, request, layout, basis }: LayoutResultsProps) {
  return (
    <>
      <p>
        <strong>{layout.sentence}</strong>
      </p>
      <p class="hint">{basis} At rest in still water; other commanded motions are held at zero.</p>
      <Warnings items={layout.warnings} />
      <h3>Reach each way</h3>
      <ReachTable layout={layout} />
      <h3>Forces that can be made</h3>
      <Outlines outlines={layout.outlines} />
      <h3>Which motions it commands</h3>
      <ul>
        {layout.motions.map(({ axis, sentence }) => (
          <li key={axis}>{sentence}</li>
        ))}
      </ul>
      <h3>When one thruster is lost</h3>
      <LossesTable layout={layout} />
      <h3>Torque of the propellers on the vehicle</h3>
      <SpinAdvice layout={layout} />
      <h3>Table for a control system</h3>
      <ExportButtons {...{ name, request, layout }} />
      <Caution about="drive" />
    </>
  );
}

function ReachTable({ layout }: Pick<LayoutResultsProps, "layout">) {
  const rows = reachRows(layout);
  const [hasBus, hasTilt] = [rows.some(({ withinBus }) => withinBus !== ""), rows.some(({ tilt }) => tilt !== "")];
  return (
    <TableBox label="Greatest force and moment of each motion">
      <table>
        <Heads
          columns={[
            "Motion",
            "Way",
            "Greatest",
            ...(hasBus ? ["Within the bus"] : []),
            "Bounded by",
            "Current",
            ...(hasTilt ? ["Tilt"] : []),
          ]}
        />
        <tbody>
          {rows.map(({ axis, way, greatest, withinBus, bounds, current, tilt }) => (
            <tr key={`${axis} ${way}`}>
              <th scope="row">{axis}</th>
              <td>{way}</td>
              <td>{greatest}</td>
              {hasBus && <td>{withinBus}</td>}
              <td>{bounds}</td>
              <td>{current}</td>
              {hasTilt && <td>{tilt}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function LossesTable({ layout }: Pick<LayoutResultsProps, "layout">) {
  const { heads, caption, rows } = lossTable(layout);
  return (
    <>
      <ul>
        {rows.map(({ thruster, sentence }) => (
          <li key={thruster}>{sentence}</li>
        ))}
      </ul>
      <TableBox label="What is left of each motion when one thruster is lost">
        <table>
          <caption>{caption}</caption>
          <Heads columns={["Lost", ...heads]} />
          <tbody>
            {rows.map(({ thruster, kept }) => (
              <tr key={thruster}>
                <th scope="row">{thruster}</th>
                {kept.map((share, at) => (
                  <td key={heads[at]} class="number">
                    {share}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}

function ExportButtons({ name, request, layout }: Omit<LayoutResultsProps, "basis">) {
  const save = (ending: "csv" | "json") => {
    const { csv, json } = allocationTable(request, layout);
    const text = ending === "csv" ? csv : `${JSON.stringify(json, null, 2)}\n`;
    const type = ending === "csv" ? "text/csv" : "application/json";
    saveFile(new Blob([text], { type }), fileNameOf(`${name} thrust allocation`, ending));
  };
  return (
    <>
      <p class="hint">
        Order and limits of the thrusters, their shares in each motion, and the pseudo-inverse for a mixer.
      </p>
      <div class="row">
        <button type="button" onClick={() => save("csv")}>
          Save as CSV
        </button>
        <button type="button" onClick={() => save("json")}>
          Save as JSON
        </button>
      </div>
    </>
  );
}
