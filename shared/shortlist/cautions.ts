/** What must stand next to a choice of thrusters. */
export const CAUTIONS: readonly string[] = [
  "These numbers are computed: before a combination is built, look at each maker's data sheet, and test it on a stand.",
  "Spinning blades cut and throw: guard the propeller and disconnect the pack before touching the shaft.",
  "Lithium packs burn when they are drawn beyond their limits: fuse every pack by its data sheet and its wires.",
  "Electricity near water kills: keep what feeds a tether behind the protection that local codes ask for, and ask a qualified person where in doubt.",
];
