/** Said in the place of a picture without curves. */
export function NothingToDraw({ needed }: { readonly needed: string }) {
  return <p class="hint">{`Nothing to draw yet: reduce ${needed} on Bench, or add a prediction below.`}</p>;
}
