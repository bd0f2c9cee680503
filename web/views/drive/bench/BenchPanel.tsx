import { formatNumber, formatQuantity, formatUncertain } from "../../../../shared/quantity/format.ts";
import { TableBox } from "../../../app/TableBox.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { Swatch } from "../../../charts/Swatch.tsx";
import { NEWTON, PERCENT, RPM, VOLT, WATT } from "../../bench/shownUnits.ts";
import { type AgainstBench, againstBench, benchPicture, carriedNote } from "./benchState.ts";

/** What the chosen motor drew on the stand, laid beside the model at the same rate and voltage. */
export function BenchPanel() {
  const { rows, problem } = againstBench.value;
  if (problem !== "") return <p class="warning">{problem}</p>;
  if (rows.length === 0)
    return <p class="hint">No run of the propellers on show was made with the motor chosen here.</p>;
  return (
    <>
      {rows.map(({ inHand, difference, circular }) => (
        <p key={inHand.name}>
          <Swatch kind="measured" style={inHand.style} /> {inHand.name}: {difference.sentence} {circular}
        </p>
      ))}
      {carriedNote.value !== "" && <p class="hint">{carriedNote.value}</p>}
      <Chart spec={benchPicture(rows)} height={320} />
      <details>
        <summary>Every plateau</summary>
        {rows.map((row) => (
          <Points key={row.inHand.name} row={row} />
        ))}
      </details>
    </>
  );
}

function Points({ row: { inHand, difference } }: { readonly row: AgainstBench }) {
  return (
    <TableBox label={`Plateaus of ${inHand.name}`}>
      <table>
        <caption>{inHand.name}</caption>
        <thead>
          <tr>
            {[
              "Rotation rate",
              "Voltage",
              "Thrust",
              "Measured power",
              "Model",
              "Measured over model",
              "Throttle of the model",
            ].map((head) => (
              <th key={head} scope="col" class="number">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {difference.points.map(
            ({ rotationRate, voltage, thrust, measuredPower, predictedPower, ratio, throttle }) => (
              <tr key={`${rotationRate} ${voltage}`}>
                <td class="number">{formatQuantity(rotationRate, RPM, 4)}</td>
                <td class="number">{formatQuantity(voltage, VOLT, 4)}</td>
                <td class="number">{formatQuantity(thrust, NEWTON, 3)}</td>
                <td class="number">{formatUncertain(measuredPower, WATT)}</td>
                <td class="number">{formatQuantity(predictedPower, WATT, 4)}</td>
                <td class="number">{formatUncertain(ratio)}</td>
                <td class="number">
                  {throttle > 1.02
                    ? `over full (${formatNumber(100 * throttle, 3)}\u202f%)`
                    : formatQuantity(throttle, PERCENT, 3)}
                </td>
              </tr>
            ),
          )}
        </tbody>
      </table>
    </TableBox>
  );
}
