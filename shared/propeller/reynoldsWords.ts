/** A Reynolds number to two digits: "1.8e5". */
export function reynoldsWords(reynolds: number): string {
  return reynolds.toExponential(1).replace("e+", "e").replace(".0e", "e");
}
