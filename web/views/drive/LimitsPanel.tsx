import { actualInWords } from "../../../shared/drive/passedLimits.ts";
import { Heads } from "../../app/Heads.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { Swatch } from "../../charts/Swatch.tsx";
import { limitText } from "./driveModel.ts";
import { driven } from "./driveState.ts";

/** Every limit that the parts state, where it is reached, and how this throttle stands to it. */
export function LimitsPanel() {
  const limited = driven.value.filter(({ point }) => point !== null && point.limits.length > 0);
  if (limited.length === 0) return <p class="hint">No part states a limit. Go by the makers' data sheets.</p>;
  return (
    <>
      {limited.map(({ inHand, point }) => (
        <TableBox key={inHand.name} label={`Limits, ${inHand.name}`}>
          <table>
            <caption>
              <Swatch kind="prediction" style={inHand.style} /> {inHand.name}: {governing(point!.governingLimit)}
            </caption>
            <Heads columns={["Limit", { numbers: "Allowed" }, { numbers: "Now" }, { numbers: "Reached at" }]} />
            <tbody>
              {point!.limits.map((state) => {
                const { name, limit, unit, reachedAtThrottle } = state;
                return (
                  <tr key={name}>
                    <th scope="row">{name === "supply voltage" ? "greatest power of the supply" : name}</th>
                    <td class="number">{`at ${unit === "V" ? "least" : "most"} ${limitText(limit, unit)}`}</td>
                    <td class="number">{actualInWords(state, point!.uncertainties)}</td>
                    <td class="number">
                      {reachedAtThrottle === null
                        ? "not reached"
                        : `${Math.round(100 * reachedAtThrottle)}\u202f% throttle`}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </TableBox>
      ))}
      <Grounds />
    </>
  );
}

function governing(name: string): string {
  return name === "supply voltage" ? "the voltage of the supply governs" : `${name} governs`;
}

/** What limits and estimates rest on, or why they are left out. */
function Grounds() {
  const texts = new Set(driven.value.flatMap(({ prepared }) => prepared?.grounds.map(({ text }) => text) ?? []));
  return (
    <ul class="drive-grounds">
      {[...texts].map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
