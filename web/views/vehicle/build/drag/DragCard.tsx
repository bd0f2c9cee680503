import { signal } from "@preact/signals";
import { TableBox } from "../../../../app/TableBox.tsx";
import { Warnings } from "../../../../app/Warnings.tsx";
import { PrintedSymbol } from "../../../../forms/Field.tsx";
import { chosenBuild } from "../buildState.ts";
import { AddedMassFields } from "./AddedMassFields.tsx";
import { DirectionFields } from "./DirectionFields.tsx";
import { DRAG_WAYS, type DragWay, givenDrag, resolvedDrag, wordsOf } from "./directions.ts";
import { resolved, waterProperties } from "./dragState.ts";
import { addedMassText, areaText, dragAtOneText } from "./dragText.ts";

/** The motion whose drag is described below the table. */
const shownWay = signal<DragWay>("forward");

/** Drag of every direction of motion, and how it is known. */
export function DragCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  const { axis, label } = wordsOf(shownWay.value);
  return (
    <>
      <Summary />
      {resolved.value.problem !== "" && <p class="warning">{resolved.value.problem}</p>}
      <section class="build-group" aria-label={`Drag ${label.toLowerCase()}`}>
        <h3>{label}</h3>
        <DirectionFields build={build} way={shownWay.value} />
        {build.drag[axis] && <AddedMassFields addedMass={build.drag[axis].addedMass} axis={axis} />}
      </section>
      <Warnings items={differing(resolved.value.drag?.warnings ?? [])} />
    </>
  );
}

/** A part that stands in several directions is warned of once. */
const differing = <W extends { readonly message: string }>(all: readonly W[]): W[] =>
  all.filter(({ message }, at) => all.findIndex((one) => one.message === message) === at);

function Summary() {
  const { drag } = resolved.value;
  const density = waterProperties.value?.density;
  return (
    <TableBox label="Drag of each direction">
      <table>
        <thead>
          <tr>
            <th scope="col">Direction</th>
            <th scope="col">
              <PrintedSymbol text="C_D" /> A
            </th>
            <th scope="col">Drag at 1 m/s</th>
            <th scope="col">Added mass</th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {DRAG_WAYS.map(({ way, label, like }) => {
            const one = drag && resolvedDrag(drag, way);
            const own = givenDrag(chosenBuild.value!.drag, way) !== undefined;
            return (
              <tr key={way}>
                <th scope="row">
                  <button
                    type="button"
                    class="quiet"
                    aria-pressed={shownWay.value === way}
                    onClick={() => {
                      shownWay.value = way;
                    }}
                  >
                    {label}
                  </button>
                </th>
                <td>{one ? areaText(one) : "not given"}</td>
                <td>{one && density !== undefined ? dragAtOneText(one, density) : "not known"}</td>
                <td>{one ? addedMassText(one) : "not given"}</td>
                <td>{own || !like ? (one?.from ?? "") : one ? `as ${wordsOf(like).label.toLowerCase()}` : ""}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableBox>
  );
}
